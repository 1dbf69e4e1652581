// The language of the page: one place to choose it. Every sentence about the procedure comes from words/; the page's own
// labels stand where they are used.
export { ENGLISH as words } from '../words/en/index.ts';
