import { describe, expect, it, test } from 'vitest';
import { generators } from '../../src/generators/index.js';
import type { Parameter } from '../../src/schema/parameter.js';
import { spoken } from '../../src/schema/spoken.js';
import { described, groups } from './described.js';

const LONGEST_CLAUSE = 60;
const LONGEST_SENTENCE = 900;

/** A meaning that gives 0, or nothing at all, a sense of its own. */
const ZERO_IS_SPECIAL = /(?<![\d.])0(?: for|: none| keeps)|left empty/;

function clauses(p: Parameter): string[] {
  return [p.say ?? '', ...(p.one === undefined ? [] : [p.one])];
}

/** The clause as a card has it, with the unit that the card puts to a number. */
function clauseAt(p: Parameter, value: number | string | boolean = p.default): string {
  const { before, word, after } = spoken(p, value);
  const unit = p.kind === 'length' ? ' mm' : p.kind === 'angle' ? ' degrees' : '';
  return before + (word ?? `${value}${unit}`) + after;
}

function sentence(title: string, parameters: readonly Parameter[]): string {
  return `${title}: ${parameters.map((p) => clauseAt(p)).join(', ')}.`;
}

/** Where the rule is broken. */
function broken(keeps: (p: Parameter) => boolean): string[] {
  return described.filter(([, p]) => !keeps(p)).map(([where, p]) => `${where}: ${p.say}`);
}

describe('every clause', () => {
  it('has one place for its value', () => {
    expect(broken((p) => clauses(p).every((say) => say.split('…').length === 2))).toEqual([]);
  });

  it('goes on in the middle of a sentence', () => {
    const goesOn = (say: string) => !/^\p{Lu}|[.,;:]|\s\s|^\s|\s$/u.test(say) && say.length <= LONGEST_CLAUSE;
    expect(broken((p) => clauses(p).every(goesOn))).toEqual([]);
  });

  it('leaves the units of lengths and angles to the card', () => {
    const bare = (p: Parameter) => !/…\s*(mm|inch|°|degree)/.test(p.say!);
    expect(broken((p) => !['length', 'angle'].includes(p.kind) || bare(p))).toEqual([]);
  });

  it('has a word for 0 where its meaning gives 0 a sense of its own, and else at most for a count', () => {
    const special = (p: Parameter) => ZERO_IS_SPECIAL.test(p.meaning);
    expect(broken((p) => !special(p) || Boolean(p.zero))).toEqual([]);
    expect(broken((p) => special(p) || p.zero === undefined || p.kind === 'count')).toEqual([]);
    expect(broken((p) => p.zero === undefined || !('min' in p) || p.min <= 0)).toEqual([]);
  });

  it('has words for a flag, and they differ', () => {
    const told = (p: Parameter) => p.kind !== 'flag' || (p.words?.[0] ?? '') !== (p.words?.[1] ?? '');
    expect(broken(told)).toEqual([]);
  });

  it('says 1 otherwise only for a count that may be 1', () => {
    const one = (p: Parameter) => p.kind === 'count' && p.min <= 1 && p.one !== p.say;
    expect(broken((p) => p.one === undefined || one(p))).toEqual([]);
  });
});

describe('a clause with its value', () => {
  const find = (name: string): Parameter => described.find(([where]) => where === name)![1];

  test.each([
    ['rosette.points', 12, '12 points'],
    ['rosette.gap', 4.2, 'walls 4.2 mm wide'],
    ['rosette.disc', 15, '15 mm disc in the eye'],
    ['rosette.disc', 0, 'no disc in the eye'],
    ['rosette.rings', 0, 'no rings round it'],
    ['rosette.rings', 1, '1 ring round it'],
    ['rosette.rings', 2, '2 rings round it'],
    ['rosette.turn', 0, 'turned 0 degrees'],
    ['tumbling-blocks.tiles', 'top-left', 'top left of the cubes chosen'],
    ['meander.across', true, 'running across the middle'],
    ['meander.across', false, 'running along the edge'],
    ['lettering.height', 'fit', 'capitals of fit height'],
    ['lettering.font', 'varela-round', 'in varela-round'],
    ['drawing.layer', '', 'layers all read from a DXF'],
    ['section passes.stepover', 45, 'roughing paths 45% of the cutter apart'],
  ])('%s at %s', (name, value, says) => {
    expect(clauseAt(find(name), value)).toBe(says);
  });

  it('is the value alone for a parameter without one', () => {
    const bare: Parameter = { kind: 'flag', name: 'x', meaning: 'X.', default: true };
    expect(spoken(bare, true)).toEqual({ before: '', word: 'true', after: '' });
  });
});

describe('the whole sentence', () => {
  const every = groups.map(([name, parameters]) => {
    const title = generators.find((g) => g.name === name)?.title ?? name;
    return [name, sentence(title, parameters)] as const;
  });

  it('reads on, and is no essay', () => {
    expect(every.filter(([, text]) => /\s\s|,,|, ,|…|undefined|NaN/.test(text))).toEqual([]);
    expect(every.filter(([, text]) => text.length >= LONGEST_SENTENCE)).toEqual([]);
  });

  // Two clauses alike would leave a maker guessing which is which; a bare value, such as a style's, is told by itself.
  it('says nothing twice', () => {
    const twice = groups.flatMap(([name, parameters]) => {
      const said = parameters.map((p) => p.say).filter((say) => say !== '…');
      return said.filter((say, i) => said.indexOf(say) !== i).map((say) => `${name}: ${say}`);
    });
    expect(twice).toEqual([]);
  });

  it('covers what there is', () => {
    expect(every.length).toBeGreaterThan(50);
    expect(described.length).toBeGreaterThan(500);
  });
});
