/** The surveyed example document and copies of it, changed. */
import { readFileSync } from "node:fs";
import type { Loose } from "../designs.js";

const TEXT = readFileSync(new URL("../../../examples/pottery-studio-surveyed.json", import.meta.url), "utf8");

/** A fresh copy, changed: its survey first, then the whole. */
export function surveyed(change: (survey: Loose, document: Loose) => void = () => undefined): Loose {
  const document: Loose = JSON.parse(TEXT);
  change(document.stair.survey, document);
  return document;
}

/** With all 41 readings. */
export const withBlunder = (): Loose => surveyed((survey) => delete survey.without);

/** The reading of a name. */
export const find = (survey: Loose, id: string): Loose =>
  survey.readings.find((own: { readonly id: string }) => own.id === id);

/** With the heights of these nosings only, R8 and all. */
export const withHeights = (...nosings: readonly number[]): Loose =>
  surveyed((survey) => {
    delete survey.without;
    survey.readings = survey.readings.filter(
      (own: { readonly kind: string; readonly to: number }) =>
        own.kind !== "height" || nosings.includes(own.to),
    );
  });

const inches = (text: string): number =>
  text.split(" ").reduce((sum, word) => {
    const [top, bottom = "1"] = word.split("/");
    return sum + Number(top) / Number(bottom);
  }, 0);

/** The same stair in a document of millimetres, each reading rounded to the whole millimetre. */
export function metric(change: (survey: Loose) => void = () => undefined): Loose {
  return surveyed((survey, document) => {
    document.unit = "mm";
    document.stair.overhang = 19;
    for (const own of survey.readings) {
      own.value = Math.round(inches(own.value) * 25.4);
      own.sigma = 1.6;
    }
    document.sections = { rail: "round 48.3 x 3.2", post: "square 38 x 3" };
    document.rails = [{ role: "top", section: "rail" }];
    delete document.endPosts;
    delete document.foot;
    document.legs = [
      { along: "stair", top: 1000, posts: { onTreads: [1, 4, 7, 10], behindNosing: 80 } },
      { along: "landing", top: 1000, posts: { at: [80, 1000] } },
    ];
    change(survey);
  });
}
