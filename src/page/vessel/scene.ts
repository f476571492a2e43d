import {
  Box3,
  DirectionalLight,
  Group,
  HemisphereLight,
  type Mesh,
  type MeshStandardMaterial,
  type Object3D,
  PerspectiveCamera,
  Scene,
  WebGLRenderer,
} from 'three';
import { OrbitControls } from 'three/addons/controls/OrbitControls.js';
import { GLTFLoader } from 'three/addons/loaders/GLTFLoader.js';
import { atan2, cos, sin } from '../../geometry/trig.js';

/** From where a vessel may be looked at, and how. */
export const LOOKS = ['outside', 'inside', 'cut away'] as const;
export type Look = (typeof LOOKS)[number];

/** How far a key turns it, radians. */
const TURN = Math.PI / 24;
/** glTF is in metres. */
const MM = 1000;

/** A vessel that can be turned. Everything is drawn when something changes, and not otherwise. */
export class VesselScene {
  readonly #renderer: WebGLRenderer;
  readonly #scene = new Scene();
  readonly #camera = new PerspectiveCamera(32, 1, 1, 20_000);
  readonly #controls: OrbitControls;
  readonly #whole = new Group();
  readonly #cut = new Group();
  #size = { height: 100, radius: 100 };
  #waiting = 0;
  #shown = false;
  #look: Look = 'outside';

  /** Throws where the browser draws nothing in three dimensions. */
  constructor(canvas: HTMLCanvasElement) {
    this.#renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true });
    this.#renderer.setPixelRatio(Math.min(2, devicePixelRatio));
    const lamp = new DirectionalLight(0xffffff, 2.1);
    lamp.position.set(-0.6, 1, 0.9);
    this.#camera.add(lamp);
    this.#scene.add(this.#camera, new HemisphereLight(0xffffff, 0x8a7a66, 1.35), this.#whole, this.#cut);
    this.#controls = new OrbitControls(this.#camera, canvas);
    this.#controls.enablePan = false;
    this.#controls.addEventListener('change', () => this.draw());
  }

  /** Puts another vessel there, a binary glTF of it whole and cut; where it is looked from stays. `height` in mm. */
  async show(model: ArrayBuffer, height: number): Promise<void> {
    const { scene } = await new GLTFLoader().parseAsync(model, '');
    empty(this.#whole);
    empty(this.#cut);
    for (const body of [...scene.children]) (body.name.startsWith('cut') ? this.#cut : this.#whole).add(body);
    for (const group of [this.#whole, this.#cut]) group.scale.setScalar(MM);
    const { max } = new Box3().setFromObject(this.#whole);
    this.#size = { height, radius: max.x };
    if (!this.#shown) this.look(this.#look);
    this.#shown = true;
    this.draw();
  }

  look(look: Look): void {
    this.#look = look;
    const { height, radius } = this.#size;
    const far = 2.1 * Math.max(2 * radius, height);
    this.#whole.visible = look !== 'cut away';
    this.#cut.visible = look === 'cut away';
    const up = look === 'inside' ? 1.15 : look === 'cut away' ? 0.32 : 0.16;
    this.#controls.target.set(0, height / 2, 0);
    this.#camera.position.set(0, height / 2 + far * sin(up), far * cos(up));
    this.#controls.update();
    this.draw();
  }

  /** Turns by steps about the axis and up or down, and comes nearer by a factor. */
  turn(round: number, up: number, nearer = 1): void {
    const { position } = this.#camera;
    const { target } = this.#controls;
    const off = position.clone().sub(target);
    off.applyAxisAngle(this.#camera.up, round * TURN);
    const steep = atan2(off.y, Math.sqrt(off.x * off.x + off.z * off.z)) + up * TURN;
    const flat = Math.sqrt(off.x * off.x + off.z * off.z);
    const long = off.length() / nearer;
    const level = long * cos(Math.min(1.5, Math.max(-1.5, steep)));
    off.set((off.x / flat) * level, long * sin(Math.min(1.5, Math.max(-1.5, steep))), (off.z / flat) * level);
    position.copy(target).add(off);
    this.#controls.update();
    this.draw();
  }

  resize(width: number, height: number): void {
    this.#renderer.setSize(width, height, false);
    this.#camera.aspect = width / Math.max(1, height);
    this.#camera.updateProjectionMatrix();
    this.draw();
  }

  /** Draws with the next frame, once. */
  draw(): void {
    if (this.#waiting) return;
    this.#waiting = requestAnimationFrame(() => {
      this.#waiting = 0;
      this.#renderer.render(this.#scene, this.#camera);
    });
  }

  dispose(): void {
    cancelAnimationFrame(this.#waiting);
    empty(this.#whole);
    empty(this.#cut);
    this.#controls.dispose();
    this.#renderer.dispose();
    this.#renderer.forceContextLoss();
  }
}

/** Frees what a group shows. */
function empty(group: Group): void {
  for (const body of [...group.children]) {
    body.traverse((o: Object3D) => {
      const { geometry, material } = o as Mesh<Mesh['geometry'], MeshStandardMaterial>;
      geometry?.dispose();
      material?.dispose();
    });
    group.remove(body);
  }
}
