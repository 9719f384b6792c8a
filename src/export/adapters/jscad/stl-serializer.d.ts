/** The serialiser ships no types; this is the part of it that the adapter calls. */
declare module "@jscad/stl-serializer" {
  interface Serializer {
    readonly mimeType: string;
    serialize(
      options: { readonly binary: boolean },
      ...objects: readonly unknown[]
    ): (ArrayBuffer | string)[];
  }
  const serializer: Serializer;
  export default serializer;
}
