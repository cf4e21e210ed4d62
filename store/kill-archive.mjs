/** Is this file a whole archive? Read with a zip library and by its own manifest, not by the program that wrote it. */
import { createHash } from "node:crypto";
import fs from "node:fs";
import { fromBufferPromise } from "yauzl";

/** @param {string} file @returns {Promise<{ wrong: string | undefined, texts: ReadonlyMap<string, string> }>} */
export async function readArchive(file) {
  /** @type {Map<string, Buffer>} */
  const files = new Map();
  try {
    const zip = await fromBufferPromise(fs.readFileSync(file));
    for await (const entry of zip.eachEntry()) {
      const chunks = [];
      for await (const chunk of await zip.openReadStreamPromise(entry)) chunks.push(/** @type {Uint8Array} */ (chunk));
      files.set(entry.fileName, Buffer.concat(chunks));
    }
  } catch (cause) {
    return { wrong: `it is no whole zip: ${cause}`, texts: new Map() };
  }
  const manifest = JSON.parse(files.get("manifest.json")?.toString() ?? "null");
  if (manifest === null) return { wrong: "it has no manifest", texts: new Map() };
  for (const named of manifest.files) {
    const bytes = files.get(named.file);
    const sha256 = bytes === undefined ? undefined : createHash("sha256").update(bytes).digest("hex");
    if (sha256 !== named.sha256) return { wrong: `${named.file} is not what the manifest says`, texts: new Map() };
  }
  if (files.size !== manifest.files.length + 1) return { wrong: "it holds other files than it says", texts: new Map() };
  const texts = manifest.documents.map((/** @type {any} */ d) => [`${d.kind} ${d.id}`, files.get(d.file)?.toString()]);
  return { wrong: undefined, texts: new Map(texts) };
}
