/** A bundled font: which file of which package holds it, and what it is good for. */
export interface Face {
  /** As a recipe writes it. */
  readonly name: string;
  readonly title: string;
  /** What kind of letters, in a few words. */
  readonly style: string;
  /** What it is good for, in a few words. */
  readonly suits: string;
  /** The file, as `require.resolve` finds it; `licenceFile` stands at the top of the same package. */
  readonly file: string;
  /** SPDX name of the font's own licence. */
  readonly licence: string;
  /** True when the small letters are drawn as capitals. */
  readonly capitalsOnly: boolean;
  /** Height of a flat capital in font units, where the file's own figure is another thing's or missing. */
  readonly capHeight?: number;
}

/** Where a face's package keeps the licence of the font; its LICENSE is that of the package's own code. */
export const licenceFile = 'LICENSE_FONT';

/** The package of a face's file, such as "@scope/name". */
export function packageOf(face: Face): string {
  return face.file.split('/').slice(0, 2).join('/');
}

/**
 * Whole TTF files, so that every character the font has can be cut. Of each family the weight whose strokes and
 * counters are nearest alike: a cutter needs both to be wide.
 */
export const faces: readonly Face[] = [
  {
    name: 'varela-round',
    title: 'Varela Round',
    style: 'even strokes, rounded ends',
    suits: 'names and numbers of any kind; the widest counters of all',
    file: '@expo-google-fonts/varela-round/400Regular/VarelaRound_400Regular.ttf',
    licence: 'OFL-1.1',
    capitalsOnly: false,
  },
  {
    name: 'fredoka',
    title: 'Fredoka Medium',
    style: 'stout even strokes, rounded ends',
    suits: 'small letters, toys, nursery doors',
    file: '@expo-google-fonts/fredoka/500Medium/Fredoka_500Medium.ttf',
    licence: 'OFL-1.1',
    capitalsOnly: false,
  },
  {
    name: 'arvo',
    title: 'Arvo Bold',
    style: 'slab serifs, even strokes',
    suits: 'signs, boxes, workshop doors',
    file: '@expo-google-fonts/arvo/700Bold/Arvo_700Bold.ttf',
    licence: 'OFL-1.1',
    capitalsOnly: false,
  },
  {
    name: 'cinzel',
    title: 'Cinzel Black',
    style: 'engraved capitals, large and small',
    suits: 'inscriptions, dedications',
    file: '@expo-google-fonts/cinzel/900Black/Cinzel_900Black.ttf',
    licence: 'OFL-1.1',
    capitalsOnly: true,
  },
  {
    name: 'unifrakturcook',
    title: 'UnifrakturCook Bold',
    style: 'blackletter, heavy',
    suits: 'a few large words; capitals only as initials',
    file: '@expo-google-fonts/unifrakturcook/700Bold/UnifrakturCook_700Bold.ttf',
    licence: 'OFL-1.1',
    capitalsOnly: false,
    capHeight: 1535,
  },
  {
    name: 'pacifico',
    title: 'Pacifico',
    style: 'joined script, even strokes',
    suits: 'names cut in one piece',
    file: '@expo-google-fonts/pacifico/400Regular/Pacifico_400Regular.ttf',
    licence: 'OFL-1.1',
    capitalsOnly: false,
  },
  {
    name: 'bebas-neue',
    title: 'Bebas Neue',
    style: 'condensed capitals',
    suits: 'house numbers, narrow boards',
    file: '@expo-google-fonts/bebas-neue/400Regular/BebasNeue_400Regular.ttf',
    licence: 'OFL-1.1',
    capitalsOnly: true,
  },
  {
    name: 'righteous',
    title: 'Righteous',
    style: 'art deco, heavy even strokes',
    suits: 'small letters, clocks, cabinets',
    file: '@expo-google-fonts/righteous/400Regular/Righteous_400Regular.ttf',
    licence: 'OFL-1.1',
    capitalsOnly: false,
  },
  {
    name: 'uncial-antiqua',
    title: 'Uncial Antiqua',
    style: 'uncial',
    suits: 'large words beside knots',
    file: '@expo-google-fonts/uncial-antiqua/400Regular/UncialAntiqua_400Regular.ttf',
    licence: 'OFL-1.1',
    capitalsOnly: false,
    capHeight: 1434,
  },
];
