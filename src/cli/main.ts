// The command line's first file: arguments and streams of this process into `main`.
import { nodeIo } from './io.ts';
import { main } from './program.ts';

// A reader that has seen enough (`| head`) ends the program quietly.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(0);
  throw error;
});

process.exitCode = await main(process.argv.slice(2), nodeIo());
