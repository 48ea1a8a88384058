import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { FluentResource } from '@fluent/bundle';
import { describe, expect, it } from 'vitest';
import { say } from './words';

const SOURCES = join(import.meta.dirname, '..');
const CATALOGUE = join(import.meta.dirname, '../../../core/messages/en.ftl');

function sources(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return entry.name === 'gen' ? [] : sources(path);
    return /(?<!\.test)\.(ts|svelte)$/.test(entry.name) ? [readFileSync(path, 'utf8')] : [];
  });
}

const used = new Set(sources(SOURCES).flatMap((text) => text.match(/'ui-[a-z0-9-]*[a-z0-9]'/g) ?? []).map((id) => id.slice(1, -1)));
const text = readFileSync(CATALOGUE, 'utf8');
const written = text.split('\n').flatMap((line) => /^([a-z][a-z0-9-]*) =/.exec(line)?.[1] ?? []);

describe('the catalogue of the page', () => {
  it('has every id that the sources use', () => {
    expect([...used].filter((id) => !written.includes(id))).toEqual([]);
  });

  it('has no id that the sources do not use', () => {
    expect(written.filter((id) => id.startsWith('ui-') && !used.has(id))).toEqual([]);
  });

  it('names each id once, and all parse', () => {
    expect(written.length).toBe(new Set(written).size);
    expect([...new FluentResource(text).body].map((entry) => entry.id)).toEqual(written);
  });
});

describe('say', () => {
  it('shows an id that is missing as it stands', () => {
    expect(say({ id: 'no-such-words' })).toBe('no-such-words');
  });

  it('groups no figures, as the record does not', () => {
    expect(say({ id: 'value-millilitres', args: { value: 1400 } })).toBe('1400 mL');
    expect(say({ id: 'part-temperature', args: { value: 36.8 } })).toBe('36.8 °C');
  });

  it('puts nested messages into words first', () => {
    const status = { id: 'ui-level-note' };
    expect(say({ id: 'ui-status-is', args: { status } })).toBe(`How well checked: ${say(status)}`);
  });
});
