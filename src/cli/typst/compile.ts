// Sets a paper with Typst, in this process. The compiler is a native package and loads only here, when something is
// printed. Fonts come from a package too: nothing depends on what the machine has installed, so bytes are the same everywhere.
import { createRequire } from 'node:module';
import { dirname } from 'node:path';
import type { PrintModel } from '../../print/index.ts';
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

/** The PDF's bytes. Throws with the compiler's own words where the template cannot set the model. */
export async function pdfOf(model: PrintModel, paper: PaperSize): Promise<Uint8Array> {
  const { NodeCompiler } = await import('@myriaddreamin/typst-ts-node-compiler');
  const compiler = NodeCompiler.create({ fontArgs: [{ fontPaths: fontFolders() }] });
  const compiled = compiler.compile({
    mainFileContent: TEMPLATE,
    inputs: { model: JSON.stringify(model), paper },
  });
  const { result } = compiled;
  if (!result) {
    const said = compiled.takeDiagnostics()?.shortDiagnostics ?? [];
    throw new Error(`this paper could not be set: ${JSON.stringify(said)}`);
  }
  return compiler.pdf(result, { pdfStandard: STANDARD, pdfTags: true });
}
