import { describe, expect, it } from 'vitest';
import { ui } from './words';

/**
 * The table of the score, as published. Source: Apgar's table in AAP and ACOG CO 644, 2015, and RCUK 2025, read at second
 * hand; reflex from memory. A heart rate of exactly 100 stands in none of its fields, so that the midwife picks.
 */
const TABLE: Record<string, [RegExp, RegExp, RegExp]> = {
  colour: [/blue or pale/i, /body pink.*blue/i, /pink all over/i],
  heart: [/none/i, /below 100/i, /over 100/i],
  reflex: [/none/i, /grimace or weak cry/i, /cry/i],
  tone: [/limp/i, /bent/i, /active/i],
  breathing: [/none/i, /slow, irregular, weak cry/i, /good cry/i],
};

describe('the table of the Apgar score', () => {
  it.each(Object.entries(TABLE))('%s is scored 0, 1 and 2 in the published words', (part, words) => {
    words.forEach((word, score) => expect(ui(`ui-apgar-${part}-${score}`)).toMatch(word));
  });

  it('gives no score to a heart rate of exactly 100', () => {
    expect([1, 2].map((score) => ui(`ui-apgar-heart-${score}`)).join()).not.toMatch(/100 a minute or/);
  });
});
