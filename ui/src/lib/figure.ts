import { language } from './language.svelte';

/** A figure such as `36.8` with the decimal sign of the language. */
export function figure(text: string): string {
  return text.replace('.', language.decimal);
}

/** What was typed, with comma or point; none where nothing was, NaN where it is no number. */
export function typedFigure(text: string): number | null {
  const figures = text.trim().replace(',', '.');
  return figures === '' ? null : Number(figures);
}
