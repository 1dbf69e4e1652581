// The version that `--version` and reports say: the package's own.
import manifest from '../../package.json' with { type: 'json' };

export const VERSION: string = manifest.version;
