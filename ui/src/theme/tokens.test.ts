import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const CSS = readFileSync(join(import.meta.dirname, 'tokens.css'), 'utf8');
const TEXT = 7;
const LARGE = 4.5;
const GRAPHIC = 3;

/** Custom properties of a block, with those of `:root` under them. */
function theme(name: string): Record<string, string> {
  return { ...tokens(/:root \{([^}]*)\}/), ...tokens(new RegExp(`data-theme='${name}'\\] \\{([^}]*)\\}`)) };
}

function tokens(block: RegExp): Record<string, string> {
  const body = block.exec(CSS)?.[1] ?? '';
  return Object.fromEntries([...body.matchAll(/--([a-z0-9-]+):\s*(#[0-9a-f]{6})/g)].map((found) => [found[1] ?? '', found[2] ?? '']));
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
  // Letters of 24 px and more, as WCAG 1.4.6 has it.
  ['large', 'ground', LARGE],
  ['mark-large', 'mark-fill', LARGE],
  ['mark-ink', 'mark-fill', TEXT],
  // The button that takes back, and the strip of a rehearsal.
  ['ground', 'ink', TEXT],
  ['on-limit', 'limit', TEXT],
  ['on-caution', 'caution', TEXT],
  ['on-note', 'note', TEXT],
  ['accent', 'ground', GRAPHIC],
  ['accent', 'raised', GRAPHIC],
  ['cord', 'ground', GRAPHIC],
  ['line', 'ground', GRAPHIC],
  ['line', 'raised', GRAPHIC],
  ['cord', 'raised', GRAPHIC],
  ['mark-edge', 'raised', GRAPHIC],
  ['notice-edge', 'ground', GRAPHIC],
  ...[0, 1, 2, 3, 4, 5].map((band): [string, string, number] => [`band-${band}`, 'ground', GRAPHIC]),
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

/** The least difference in lightness, CIE L* of 0 to 100, at which two grounds are told apart without hue (ours). */
const APART = 10;

/** CIE 1976 lightness. */
function lightness(hex: string): number {
  const y = luminance(hex);
  return y <= 216 / 24389 ? (y * 24389) / 27 : 116 * Math.cbrt(y) - 16;
}

// Yellow and cyan are nearly as light as each other: between them the shape and the pattern tell, which the next test holds.
it.each(['day', 'night', 'red'])('sets the gravest level apart from the others without hue, theme %s', (name) => {
  const values = theme(name);
  const at = (token: string): number => lightness(values[token] ?? '');
  for (const other of ['caution', 'note']) {
    const apart = Math.max(Math.abs(at('limit') - at(other)), Math.abs(at('on-limit') - at(`on-${other}`)));
    expect(apart, other).toBeGreaterThanOrEqual(APART);
  }
});

it('gives each level a shape and a pattern of its own', () => {
  const sign = readFileSync(join(import.meta.dirname, '../parts/LevelSign.svelte'), 'utf8');
  const shapes = [...sign.matchAll(/class="shape" (d="[^"]+"|cx=[^/]+)/g)].map((found) => found[1]);
  const patterns = [...sign.matchAll(/class="pattern[^"]*" d="([^"]+)"/g)].map((found) => found[1]);
  expect([new Set(shapes).size, new Set(patterns).size]).toEqual([3, 3]);
  const notice = readFileSync(join(import.meta.dirname, '../parts/NoticeBox.svelte'), 'utf8');
  const edges = ['limit', 'caution', 'note'].map((level) => new RegExp(`\\.${level}::before \\{\\s*background: ([a-z-]+\\([^ ,]+)`).exec(notice)?.[1]);
  expect(new Set(edges).size, 'the pattern of the edge').toBe(3);
});
