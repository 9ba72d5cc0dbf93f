/** The last `width` (1..4) digits of a whole number ≥ 0, padded with zeros. */
export function lastDigits(value: number, width: number): string {
  return `000${value}`.slice(-width);
}

/** The characters under `#`, all without a template; undefined when the text does not fit. `?` fits any character. */
export function extract(text: string, template: string | undefined): string | undefined {
  if (template === undefined) return text;
  if (text.length !== template.length) return undefined;
  let code = "";
  for (let i = 0; i < text.length; i++) {
    const mark = template[i];
    if (mark === "#") code += text[i];
    else if (mark !== "?" && mark !== text[i]) return undefined;
  }
  return code;
}
