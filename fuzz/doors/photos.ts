/** What comes of any bytes sent as a photograph? A picture that a second reading knows as one, or a described refusal. */
import fc from "fast-check";
import { PHOTO_LIMIT_BYTES, sniffPicture } from "../../store/sniff-picture.js";
import { JPEG, PNG, WEBP } from "../../store/test-pictures.js";
import { accepted, type Door, mustHold, refusedAs, type Went } from "../door.js";
import { type ByteStep, byteStep, mangledBytes } from "../inputs/mangled-bytes.js";
import { describedRefusals } from "../inputs/refusal-faults.js";

interface PhotoInput {
  readonly from: "jpeg" | "png" | "webp" | "none";
  readonly steps: readonly ByteStep[];
  /** In hexadecimal, put behind it, or alone where `from` is none. */
  readonly more: string;
}

const PICTURES = { jpeg: JPEG, png: PNG, webp: WEBP, none: new Uint8Array() };
const inputs: fc.Arbitrary<PhotoInput> = fc.record({
  from: fc.constantFrom("jpeg", "jpeg", "jpeg", "png", "png", "webp", "webp", "none"),
  steps: fc.oneof(
    { weight: 3, arbitrary: fc.array(byteStep, { maxLength: 1 }) },
    { weight: 1, arbitrary: fc.array(byteStep, { maxLength: 5 }) },
  ),
  more: fc.oneof(
    { weight: 5, arbitrary: fc.constant("") },
    {
      weight: 1,
      arbitrary: fc.oneof(
        fc.uint8Array({ maxLength: 60 }).map((b) => Buffer.from(b).toString("hex")),
        fc
          .constantFrom("<script>", "<!doctype html>", "PK\u0003\u0004", "GIF89a", "RIFF")
          .map((t) => Buffer.from(t).toString("hex")),
      ),
    },
  ),
});

function put({ from, steps, more }: PhotoInput): Went {
  const bytes = new Uint8Array(Buffer.concat([mangledBytes(PICTURES[from], steps), Buffer.from(more, "hex")]));
  const before = Buffer.from(bytes).toString("hex");
  const sniffed = sniffPicture(bytes);
  mustHold(Buffer.from(bytes).toString("hex") === before, () => "the bytes were changed");
  if (sniffed.kind === "refused") {
    describedRefusals(sniffed.refusals);
    return refusedAs(sniffed.refusals[0]?.code ?? "");
  }
  const { mediaType, widthPx, heightPx, bytes: kept, leftOutBytes } = sniffed;
  mustHold(kept.length + leftOutBytes === bytes.length, () => "bytes are missing");
  mustHold(before.startsWith(Buffer.from(kept).toString("hex")), () => "other bytes were kept than came in");
  mustHold(kept.length <= PHOTO_LIMIT_BYTES, () => "too large");
  mustHold(
    [widthPx, heightPx].every((n) => Number.isInteger(n) && n > 0 && n <= 20_000),
    () => `${widthPx} x ${heightPx}`,
  );
  const said = plainSize(kept, mediaType);
  mustHold(
    said === undefined || (said[0] === widthPx && said[1] === heightPx),
    () => `${mediaType} of ${widthPx} x ${heightPx}; its header says ${said?.join(" x ")}`,
  );
  const text = Buffer.from(kept.subarray(0, 1400)).toString("latin1").toLowerCase();
  mustHold(!/<script|<!doctype|<html/.test(text), () => "a page inside a picture was kept");
  return accepted(mediaType);
}

/** Width and height by the header alone (PNG, W3C: IHDR at byte 16; JPEG, ITU-T T.81 B.2.2: the first frame header). */
function plainSize(bytes: Uint8Array, mediaType: string): readonly [number, number] | undefined {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (mediaType === "image/png") return [view.getUint32(16), view.getUint32(20)];
  if (mediaType !== "image/jpeg") return undefined;
  for (let i = 2; i + 9 < bytes.length; ) {
    const marker = bytes[i + 1] ?? 0;
    if (marker === 0xff) i += 1;
    else if (marker === 1 || (marker >= 0xd0 && marker <= 0xd7)) i += 2;
    else if (marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker))
      return [view.getUint16(i + 7), view.getUint16(i + 5)];
    else i += 2 + view.getUint16(i + 2);
  }
  return undefined;
}

export const photos: Door<PhotoInput> = {
  name: "photos",
  holds: "bytes sent as a photograph are kept as the picture that their header says, or refused with a reason",
  inputs,
  put,
};
