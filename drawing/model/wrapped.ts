/** Which lines hold this text when a line may have so many letters? Breaks at spaces; a longer word is cut. At least one line. */
export function wrapped(text: string, letters: number): readonly string[] {
  const most = Math.max(1, Math.floor(letters));
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(/\s+/).filter((w) => w !== "")) {
    let rest = [...word];
    if (line !== "" && [...line].length + 1 + rest.length <= most) {
      line += ` ${word}`;
      continue;
    }
    if (line !== "") lines.push(line);
    while (rest.length > most) {
      lines.push(rest.slice(0, most).join(""));
      rest = rest.slice(most);
    }
    line = rest.join("");
  }
  return line !== "" || lines.length === 0 ? [...lines, line] : lines;
}
