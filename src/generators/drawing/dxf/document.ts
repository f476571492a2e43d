import { BadInput, Refusal } from '../../../schema/fault.js';
import { shortened } from '../shortened.js';
import { Unreadable } from '../unreadable.js';
import { Entity } from './entity.js';
import { Groups } from './groups.js';
import { mmPerUnit } from './units.js';

/** Entities that are kept of a file: more draw no figure that a cutter could follow. */
const MOST_ENTITIES = 1_000_000;

/** A POLYLINE with the VERTEX entities that follow it, or any other entity by itself. */
export interface Drawn {
  readonly entity: Entity;
  readonly vertices: readonly Entity[];
}

export interface Block {
  readonly x: number;
  readonly y: number;
  readonly drawn: Drawn[];
}

export interface LayerState {
  readonly name: string;
  readonly frozen: boolean;
  readonly off: boolean;
}

/** A DXF file, read but not yet drawn. Layers and blocks by name in lower case, since names ignore case. */
export interface DxfDocument {
  /** mm a unit; null when the file names none. */
  readonly unit: number | null;
  readonly layers: ReadonlyMap<string, LayerState>;
  readonly blocks: ReadonlyMap<string, Block>;
  readonly drawn: readonly Drawn[];
}

/** Reads the sections of a DXF text. Throws BadInput with the line for what is no DXF, Refusal for too much of it. */
export function readDocument(text: string, source: string): DxfDocument {
  return new Reader(new Groups(text, source)).document();
}

class Reader {
  readonly #groups: Groups;
  readonly #layers = new Map<string, LayerState>();
  readonly #blocks = new Map<string, Block>();
  readonly #drawn: Drawn[] = [];
  #unit: number | null = null;
  #entities = 0;
  /** Is there a pair at hand? */
  #more = false;

  constructor(groups: Groups) {
    this.#groups = groups;
  }

  document(): DxfDocument {
    const g = this.#groups;
    let sections = 0;
    let ended = false;
    this.#step();
    while (this.#more && !ended) {
      if (this.#starts('SECTION')) {
        sections++;
        this.#section();
      } else if (this.#starts('EOF')) ended = true;
      else if (g.code === 999) this.#step();
      else
        throw g.fault(
          '',
          `has "${shortened(g.value)}" where a SECTION should start; save the drawing as DXF again`,
        );
    }
    if (sections === 0) throw g.fault('', 'holds no SECTION; give a DXF file');
    if (!ended) throw g.fault('', 'ends before its EOF, so part of it is missing; save the drawing again');
    return { unit: this.#unit, layers: this.#layers, blocks: this.#blocks, drawn: this.#drawn };
  }

  #step(): void {
    this.#more = this.#groups.next();
  }

  #starts(name: string): boolean {
    return this.#groups.code === 0 && this.#groups.value.trim() === name;
  }

  #section(): void {
    this.#step();
    const name = this.#more && this.#groups.code === 2 ? this.#groups.value.trim() : '';
    if (name === 'HEADER') this.#header();
    else if (name === 'TABLES') this.#tables();
    else if (name === 'BLOCKS') this.#blocksSection();
    else if (name === 'ENTITIES') {
      this.#step();
      this.#entitiesTo(this.#drawn, 'ENDSEC');
    }
    while (this.#more && !this.#starts('ENDSEC')) this.#step();
    this.#step();
  }

  #header(): void {
    let variable = '';
    for (this.#step(); this.#more && !this.#starts('ENDSEC'); this.#step()) {
      const { code, value } = this.#groups;
      if (code === 9) variable = value.trim();
      else if (code === 70 && variable === '$INSUNITS') this.#unit = mmPerUnit(Number(value));
    }
  }

  #tables(): void {
    this.#step();
    while (this.#more && !this.#starts('ENDSEC')) {
      if (!this.#starts('LAYER')) {
        this.#step();
        continue;
      }
      const layer = this.#entity();
      this.#guard(layer, () => {
        const name = layer.text(2) ?? '';
        const off = layer.number(62, 7) < 0;
        this.#layers.set(name.toLowerCase(), { name, frozen: layer.flag(70, 1), off });
      });
    }
  }

  #blocksSection(): void {
    this.#step();
    while (this.#more && !this.#starts('ENDSEC')) {
      if (!this.#starts('BLOCK')) {
        this.#step();
        continue;
      }
      const head = this.#entity();
      const drawn: Drawn[] = [];
      this.#entitiesTo(drawn, 'ENDBLK');
      this.#guard(head, () => {
        const block = { x: head.number(10, 0), y: head.number(20, 0), drawn };
        this.#blocks.set((head.text(2) ?? '').toLowerCase(), block);
      });
    }
  }

  /** Entities up to the one named `end`, which is left at hand, or to the end of the section. */
  #entitiesTo(out: Drawn[], end: string): void {
    while (this.#more && !this.#starts(end) && !this.#starts('ENDSEC')) {
      if (this.#groups.code !== 0) {
        this.#step();
        continue;
      }
      const entity = this.#entity();
      const vertices: Entity[] = [];
      if (entity.kind === 'POLYLINE') {
        while (this.#more && this.#starts('VERTEX')) vertices.push(this.#entity());
        if (this.#more && this.#starts('SEQEND')) this.#entity();
      }
      if (entity.kind === 'SEQEND' || entity.kind === 'VERTEX') continue;
      out.push({ entity, vertices });
    }
  }

  /** The entity whose name is at hand, with its groups; what follows it is at hand then. */
  #entity(): Entity {
    const g = this.#groups;
    if (++this.#entities > MOST_ENTITIES)
      throw new Refusal(
        'too-large',
        `${g.source}: holds more than ${MOST_ENTITIES} entities; make it simpler`,
      );
    const entity = new Entity(g.value.trim(), g.line);
    for (this.#step(); this.#more && g.code !== 0; this.#step())
      // Extended data (1000 and above) and comments draw nothing.
      if (g.code < 999) entity.add(g.code, g.value);
    return entity;
  }

  #guard(entity: Entity, read: () => void): void {
    try {
      read();
    } catch (e) {
      if (!(e instanceof Unreadable)) throw e;
      throw new BadInput([
        { source: `${this.#groups.source}:${entity.line}`, where: entity.kind, message: e.message },
      ]);
    }
  }
}
