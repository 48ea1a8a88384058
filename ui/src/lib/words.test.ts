import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { FluentResource } from '@fluent/bundle';
import { describe, expect, it } from 'vitest';
import { language } from './language.svelte';
import { dateWords } from './when';
import { say } from './words';

const SOURCES = join(import.meta.dirname, '..');
const CATALOGUES = join(import.meta.dirname, '../../../core/messages');

function sources(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return entry.name === 'gen' ? [] : sources(path);
    return /(?<!\.test)\.(ts|svelte)$/.test(entry.name) ? [readFileSync(path, 'utf8')] : [];
  });
}

const used = new Set(sources(SOURCES).flatMap((text) => text.match(/'ui-[a-z0-9-]*[a-z0-9]'/g) ?? []).map((id) => id.slice(1, -1)));
const text = readFileSync(join(CATALOGUES, 'en.ftl'), 'utf8');
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

describe.each(readdirSync(CATALOGUES))('%s', (file) => {
  const entries = [...new FluentResource(readFileSync(join(CATALOGUES, file), 'utf8')).body];

  it('has every message of English, and each can be read', () => {
    expect(entries.map((entry) => entry.id).sort()).toEqual([...written].sort());
  });

  it('writes a figure with its own decimal sign, and says its dates', async () => {
    await language.speak(file.replace('.ftl', ''));
    expect(language.decimal).toMatch(/^[.,]$/);
    expect(say({ id: 'measure-cm', args: { value: 54.5 } })).toContain(`54${language.decimal}5`);
    expect(say({ id: 'value-ratio', args: { value: { id: 'decimal', args: { whole: '0', places: '90' } } } })).toContain(`0${language.decimal}90`);
    const months = Array.from({ length: 12 }, (_, month) => say(dateWords(`2026-${String(month + 1).padStart(2, '0')}-25`)));
    expect(new Set(months).size).toBe(12);
    expect(months.every((month) => month.includes('25') && month.includes('2026'))).toBe(true);
    await language.speak('en');
  });

  it('uses no plural that its language has not', () => {
    const own = new Intl.PluralRules(file.replace('.ftl', '')).resolvedOptions().pluralCategories;
    const others = ['zero', 'one', 'two', 'few', 'many', 'other'].filter((name) => !own.includes(name as Intl.LDMLPluralRule));
    // Keys of a selection stand as text in what the catalogue is read into.
    const keys = JSON.stringify(entries).matchAll(/"key":\{"type":"str","value":"([a-z]+)"/g);
    const used = new Set([...keys].map(([, key]) => key));
    expect(used).toContain('other');
    expect(others.filter((name) => used.has(name))).toEqual([]);
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
