/**
 * A photograph of its own bytes, as large as wanted: grey noise as PNG (W3C "Portable Network Graphics", chunks in 5.3, the
 * check of a chunk in annex D), which packs to hardly less than it is.
 */
import { createHash, randomBytes } from "node:crypto";
import { deflateSync } from "node:zlib";

/** @param {number} size about so many bytes */
export function photoOf(size) {
  const side = Math.ceil(Math.sqrt(size));
  const head = Buffer.alloc(13);
  head.writeUInt32BE(side, 0);
  head.writeUInt32BE(side, 4);
  // 8 bits a pixel; the other four numbers are 0: grey, deflate, plain filters, not interlaced.
  head[8] = 8;
  const lines = Buffer.concat(Array.from({ length: side }, () => Buffer.concat([Buffer.from([0]), randomBytes(side)])));
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  const chunks = [chunk("IHDR", head), chunk("IDAT", deflateSync(lines, { level: 1 })), chunk("IEND", Buffer.alloc(0))];
  const photo = Buffer.concat([signature, ...chunks]);
  return { bytes: new Uint8Array(photo), sha256: createHash("sha256").update(photo).digest("hex") };
}

/** @param {string} type @param {Buffer} data */
function chunk(type, data) {
  const body = Buffer.concat([Buffer.from(type, "latin1"), data]);
  const whole = Buffer.alloc(body.length + 8);
  whole.writeUInt32BE(data.length, 0);
  body.copy(whole, 4);
  whole.writeUInt32BE(crc(body), body.length + 4);
  return whole;
}

/** @param {Buffer} bytes */
function crc(bytes) {
  let rest = 0xffffffff;
  for (const byte of bytes) {
    rest ^= byte;
    for (let bit = 0; bit < 8; bit += 1) rest = rest & 1 ? (rest >>> 1) ^ 0xedb88320 : rest >>> 1;
  }
  return (rest ^ 0xffffffff) >>> 0;
}
