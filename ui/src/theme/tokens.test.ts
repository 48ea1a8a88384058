import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const CSS = readFileSync(join(import.meta.dirname, 'tokens.css'), 'utf8');
const TEXT = 7;
const GRAPHIC = 3;

/** Custom properties of a block, with those of `:root` under them. */
function theme(name: string): Record<string, string> {
  return { ...tokens(/:root \{([^}]*)\}/), ...tokens(new RegExp(`data-theme='${name}'\\] \\{([^}]*)\\}`)) };
}

function tokens(block: RegExp): Record<string, string> {
  const body = block.exec(CSS)?.[1] ?? '';
  return Object.fromEntries([...body.matchAll(/--([a-z-]+):\s*(#[0-9a-f]{6})/g)].map((found) => [found[1] ?? '', found[2] ?? '']));
}

/** Relative luminance as WCAG 2 has it. */
function luminance(hex: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5]
    .map((at) => parseInt(hex.slice(at, at + 2), 16) / 255)
    .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function contrast(a: string, b: string): number {
  const [dark = 0, light = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (light + 0.05) / (dark + 0.05);
}

const PAIRS: [string, string, number][] = [
  ['ink', 'ground', TEXT],
  ['ink', 'raised', TEXT],
  ['quiet', 'ground', TEXT],
  ['quiet', 'raised', TEXT],
  ['mark-ink', 'mark-fill', TEXT],
  ['on-limit', 'limit', TEXT],
  ['on-caution', 'caution', TEXT],
  ['on-note', 'note', TEXT],
  ['accent', 'ground', GRAPHIC],
  ['cord', 'ground', GRAPHIC],
  ['line', 'ground', GRAPHIC],
  ['mark-edge', 'ground', GRAPHIC],
];

describe.each(['day', 'night', 'red'])('theme %s', (name) => {
  const values = theme(name);
  it.each(PAIRS)('%s on %s is at least %d', (front, back, least) => {
    expect(contrast(values[front] ?? '', values[back] ?? '')).toBeGreaterThanOrEqual(least);
  });
});

it('keeps the dark grounds no lighter than #121212', () => {
  for (const name of ['night', 'red']) expect(luminance(theme(name)['ground'] ?? '')).toBeLessThanOrEqual(luminance('#121212'));
});
