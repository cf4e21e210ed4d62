/**
 * Which signs has this font a glyph for? Reads the character map (cmap, formats 4 and 12) of a TrueType file.
 * Source: OpenType specification, "cmap - Character to Glyph Index Mapping Table".
 */
export function coveredSigns(font: Uint8Array): ReadonlySet<number> {
  const view = new DataView(font.buffer, font.byteOffset, font.byteLength);
  const signs = new Set<number>();
  const tables = view.getUint16(4);
  for (let i = 0; i < tables; i++) {
    const record = 12 + i * 16;
    if (view.getUint32(record) !== 0x636d6170) continue; // "cmap"
    const cmap = view.getUint32(record + 8);
    const count = view.getUint16(cmap + 2);
    for (let k = 0; k < count; k++) {
      const sub = cmap + view.getUint32(cmap + 4 + k * 8 + 4);
      const format = view.getUint16(sub);
      if (format === 4) readFormat4(view, sub, signs);
      else if (format === 12) readFormat12(view, sub, signs);
    }
  }
  return signs;
}

function readFormat4(view: DataView, sub: number, signs: Set<number>): void {
  const twice = view.getUint16(sub + 6);
  for (let i = 0; i < twice; i += 2) {
    const end = view.getUint16(sub + 14 + i);
    const start = view.getUint16(sub + 16 + twice + i);
    const delta = view.getUint16(sub + 16 + 2 * twice + i);
    const at = sub + 16 + 3 * twice + i;
    const offset = view.getUint16(at);
    for (let sign = start; sign <= end && sign !== 0xffff; sign++) {
      const raw = offset === 0 ? sign : view.getUint16(at + offset + 2 * (sign - start));
      if (offset !== 0 && raw === 0) continue;
      if (((raw + delta) & 0xffff) !== 0) signs.add(sign);
    }
  }
}

function readFormat12(view: DataView, sub: number, signs: Set<number>): void {
  const groups = view.getUint32(sub + 12);
  for (let i = 0; i < groups; i++) {
    const at = sub + 16 + i * 12;
    const end = view.getUint32(at + 4);
    for (let sign = view.getUint32(at); sign <= end; sign++) signs.add(sign);
  }
}
