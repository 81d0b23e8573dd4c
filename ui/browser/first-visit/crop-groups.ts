// Groups of crops as people call them: 'herbs', 'root vegetables', 'brassicas'. By botanical family where the word means one (a farm's own
// crops are in it then), else by the library's crops. Which crop is in which is common practice. Pure.

export interface CropGroup {
  /** What it is called, in the singular, with commas between. */
  readonly called: string;
  readonly family?: string;
  readonly crops?: readonly string[];
}

const HERBS = ['Basil', 'Chives', 'Cilantro', 'Dill', 'Mint', 'Oregano', 'Parsley', 'Rosemary', 'Sage', 'Thyme'];
const ASIAN_GREENS = ['Bok choy', 'Komatsuna', 'Mizuna', 'Mustard greens', 'Napa cabbage', 'Tatsoi'];

export const CROP_GROUPS: readonly CropGroup[] = [
  { called: 'herb, culinary herb, kitchen herb, pot herb', crops: HERBS },
  {
    called: 'flower, cut flower',
    crops: ['Cosmos', 'Lisianthus', 'Snapdragon', 'Statice', 'Sunflower, cut', 'Zinnia'],
  },
  {
    called: 'root, root crop, root vegetable, root veg, tuber',
    crops: [
      'Beet',
      'Carrot',
      'Celeriac',
      'Daikon',
      'Ginger, young',
      'Parsnip',
      'Potato',
      'Radish',
      'Rutabaga',
      'Salad turnip',
      'Storage radish',
      'Sunchoke',
      'Sweet potato',
      'Turnip, storage',
    ],
  },
  {
    called: 'salad, salad green, salad crop',
    crops: [
      'Arugula',
      'Claytonia',
      'Corn salad',
      'Endive and escarole',
      'Lettuce, head',
      'Lettuce, leaf',
      'Lettuce, mini head',
      'Lettuce, romaine',
      'Mizuna',
      'Radicchio',
      'Salad mix, baby leaf',
      'Sorrel',
      'Spinach',
    ],
  },
  {
    called: 'green, leafy green, leaf vegetable, leafy vegetable',
    crops: [...ASIAN_GREENS, 'Arugula', 'Chard', 'Collards', 'Kale', 'Sorrel', 'Spinach'],
  },
  { called: 'asian green, oriental green, stir fry green', crops: ASIAN_GREENS },
  { called: 'fruit', crops: ['Ground cherry', 'Melon', 'Rhubarb', 'Strawberry', 'Watermelon'] },
  { called: 'soft fruit, berry', crops: ['Ground cherry', 'Strawberry'] },
  {
    called: 'perennial',
    crops: ['Asparagus', 'Rhubarb', 'Strawberry', 'Chives', 'Mint', 'Oregano', 'Rosemary', 'Sage', 'Thyme'],
  },
  { called: 'allium', family: 'Amaryllidaceae' },
  { called: 'brassica, cole crop, crucifer', family: 'Brassicaceae' },
  { called: 'legume, pulse', family: 'Fabaceae' },
  { called: 'cucurbit, gourd', family: 'Cucurbitaceae' },
  { called: 'nightshade, solanaceous crop', family: 'Solanaceae' },
  { called: 'umbellifer', family: 'Apiaceae' },
];

/** Whether a crop is in the group that people call so, in the singular or plural, or of the botanical family itself. */
export function isInGroup(
  typed: string,
  { name, family }: { readonly name: string; readonly family: string },
): boolean {
  const wanted = typed.trim().toLowerCase();
  if (wanted !== '' && family.toLowerCase() === wanted) return true;
  const singular = [wanted, wanted.replace(/s$/, ''), wanted.replace(/ies$/, 'y')];
  const group = CROP_GROUPS.find(({ called }) => called.split(', ').some((one) => singular.includes(one)));
  return group !== undefined && (group.family === family || (group.crops ?? []).includes(name));
}
