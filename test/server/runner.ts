// The served unit as a program of its own, for tests that send signals to it: what was asked for, as JSON, and the page.
import { serve } from '../../src/server/serve.ts';

const [, , asked = '{}', page = ''] = process.argv;
process.exitCode = await serve(JSON.parse(asked), {
  env: process.env,
  page,
  typeset: '',
  out: (text) => void process.stdout.write(text),
  err: (text) => void process.stderr.write(text),
});
