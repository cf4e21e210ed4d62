/** Which other documents does a build name? Each of these keys is also the kind of the document that it names. */
import type { BuildDoc } from "./build.js";
import type { DocKind } from "./documents.js";

export const NAMED_BY_BUILD = [
  "donor",
  "rider",
  "intent",
  "shop",
  "bin",
  "prices",
  "route",
] as const satisfies readonly (DocKind & keyof BuildDoc)[];

export interface DocumentName {
  readonly kind: string;
  readonly id: string;
}

/** The build itself first, then what it names, whether that is there or not. */
export function namedByBuild(build: BuildDoc): readonly DocumentName[] {
  const named = NAMED_BY_BUILD.flatMap((kind): readonly DocumentName[] => {
    const id = build[kind];
    return id === undefined ? [] : [{ kind, id }];
  });
  return [{ kind: "build", id: build.id }, ...named];
}
