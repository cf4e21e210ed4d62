import { NodeCompiler } from "@myriaddreamin/typst-ts-node-compiler";
import { printFonts } from "./fonts.js";

let compiler: NodeCompiler | undefined;

/**
 * What does this Typst source look like as PDF? All data go in as named texts, never as source, so no text of a builder can become
 * an instruction. Same source and inputs, same bytes: no clock is read. Throws when the source itself is wrong, which is an error of ours.
 */
export function typstPdf(
  source: string,
  inputs: Readonly<Record<string, string>>,
): { readonly pdf: Uint8Array; readonly pages: number; readonly warnings: readonly string[] } {
  compiler ??= NodeCompiler.create({ fontArgs: [{ fontBlobs: [...printFonts().blobs] }] });
  const run = compiler.compile({ mainFileContent: source, inputs: { ...inputs } });
  const document = run.result;
  if (document === null || run.hasError()) {
    const error = run.takeDiagnostics() ?? run.takeError();
    const found = error === null ? [] : compiler.fetchDiagnostics(error).map(messageOf);
    throw new Error(`The print could not be laid out: ${found.join("; ") || "no reason given"}`);
  }
  const warned = run.takeWarnings();
  const warnings = warned === null ? [] : compiler.fetchDiagnostics(warned).map(messageOf);
  const pdf = compiler.pdf(document);
  const pages = document.numOfPages;
  compiler.evictCache(10);
  return { pdf: new Uint8Array(pdf), pages, warnings };
}

function messageOf(diagnostic: unknown): string {
  if (typeof diagnostic === "object" && diagnostic !== null && "message" in diagnostic)
    return String(diagnostic.message);
  return String(diagnostic);
}
