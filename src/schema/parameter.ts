/**
 * Descriptions of values a user may set, as plain data: the recipe reader, the help texts, the JSON Schema and the
 * page are all made from them. Lengths are in mm here and angles in degrees, as a recipe writes them.
 */
interface Described {
  readonly name: string;
  /** One plain sentence. */
  readonly meaning: string;
  /** A clause of a card's sentence with … where the value stands, such as "walls … wide"; no capital, no full stop. */
  readonly say?: string;
  /** The word that a card shows for 0 where that is no plain size, such as "none"; also for a text left empty. */
  readonly zero?: string;
  /** The clause where the value is 1, if it differs: "… ring round it". */
  readonly one?: string;
  /** The range that a value is mostly in, in the parameter's unit, where `usualRange` cannot tell it from the default. */
  readonly often?: readonly [number, number];
}

export interface LengthParameter extends Described {
  readonly kind: 'length';
  readonly default: number;
  readonly min: number;
  readonly max: number;
  /** Words that may stand in a length's place; they are read as they are. */
  readonly words?: readonly string[];
}

export interface AngleParameter extends Described {
  readonly kind: 'angle';
  readonly default: number;
  readonly min: number;
  readonly max: number;
}

export interface CountParameter extends Described {
  readonly kind: 'count';
  readonly default: number;
  readonly min: number;
  readonly max: number;
}

export interface NumberParameter extends Described {
  readonly kind: 'number';
  readonly default: number;
  readonly min: number;
  readonly max: number;
}

export interface ChoiceParameter extends Described {
  readonly kind: 'choice';
  readonly default: string;
  readonly options: readonly { readonly value: string; readonly meaning: string }[];
}

export interface TextParameter extends Described {
  readonly kind: 'text';
  readonly default: string;
  readonly maxLength: number;
  /** May it have several lines, with \n between them? */
  readonly lines?: boolean;
}

export interface FlagParameter extends Described {
  readonly kind: 'flag';
  readonly default: boolean;
  /** What stands in its clause when it is true, and when it is false. */
  readonly words?: readonly [string, string];
}

export type Parameter =
  | LengthParameter
  | AngleParameter
  | CountParameter
  | NumberParameter
  | ChoiceParameter
  | TextParameter
  | FlagParameter;

/** Values by parameter name, as read: lengths in mm, angles in radians, every parameter present. */
export type Values = Readonly<Record<string, number | string | boolean>>;

/** A parameter's clause on a card: bare, or with the words and the range that go with it. */
export type Clause = string | (Pick<Described, 'zero' | 'one' | 'often'> & { readonly say: string });

/** The keys of a parameter that its clause gives. */
export function clause(given: Clause): Exclude<Clause, string> {
  return typeof given === 'string' ? { say: given } : given;
}
