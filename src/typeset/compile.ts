// Sets a paper with Typst, in this process. The compiler is a native package and loads only here, when something is
// printed. Fonts come from a package too: nothing depends on what the machine has installed, so bytes are the same everywhere.
import { createRequire } from 'node:module';
import { dirname } from 'node:path';
import type { PrintModel } from '../print/index.ts';
import { TEMPLATE } from './template.ts';

export const PAPERS = ['a4', 'letter'] as const;
export type PaperSize = (typeof PAPERS)[number];

/** PDF/UA-1: tags, title, language and alternative texts, refused by the compiler where one is missing. */
const STANDARD = 'ua-1';

const FACES = [
  '400Regular/NotoSans_400Regular.ttf',
  '400Regular_Italic/NotoSans_400Regular_Italic.ttf',
  '500Medium/NotoSans_500Medium.ttf',
  '600SemiBold/NotoSans_600SemiBold.ttf',
  '700Bold/NotoSans_700Bold.ttf',
];

/** Folders of the font files, found as any package is. */
function fontFolders(): string[] {
  const { resolve } = createRequire(import.meta.url);
  return FACES.map((face) => dirname(resolve(`@expo-google-fonts/noto-sans/${face}`)));
}

/** Apostrophes as they are printed, whatever a unit wrote, and no arrow at the end of a line. */
const printed = (model: PrintModel): string =>
  JSON.stringify(model)
    .replaceAll(/(?<=\p{L})'(?=\p{L})/gu, '’')
    .replaceAll(' -> ', '\u00a0->\u00a0');

/** Characters that the papers' fonts have no shape for: a paper with a gap in it is refused. */
export class NoShape extends Error {
  override readonly name = 'NoShape';
  readonly characters: readonly string[];

  constructor(characters: readonly string[]) {
    super(`the fonts of the papers have no shape for: ${characters.join(' ')}`);
    this.characters = characters;
  }
}

/** As the compiler tells of them, sometimes in quotes within quotes. */
const WITHOUT_SHAPE = /the text `\\?"(.+?)\\?"` could not be displayed/g;

function told(error: unknown): Error {
  const said = error instanceof Error ? error.message : String(error);
  const characters = [...said.matchAll(WITHOUT_SHAPE)].map(([, one = '']) => one);
  return characters.length > 0
    ? new NoShape([...new Set(characters)])
    : new Error(`this paper could not be set: ${said}`);
}

/** The PDF's bytes. Throws with the compiler's own words where the template cannot set the model. */
export async function pdfOf(model: PrintModel, paper: PaperSize): Promise<Uint8Array> {
  const { NodeCompiler } = await import('@myriaddreamin/typst-ts-node-compiler');
  const compiler = NodeCompiler.create({ fontArgs: [{ fontPaths: fontFolders() }] });
  const compiled = compiler.compile({
    mainFileContent: TEMPLATE,
    inputs: { model: printed(model), paper },
  });
  const { result } = compiled;
  if (!result) {
    const said = compiled.takeDiagnostics()?.shortDiagnostics ?? [];
    throw new Error(`this paper could not be set: ${JSON.stringify(said)}`);
  }
  try {
    return compiler.pdf(result, { pdfStandard: STANDARD, pdfTags: true });
  } catch (error) {
    throw told(error);
  }
}
