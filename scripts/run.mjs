// Runs one program for a stage: output goes through as it comes and is kept for the stage to read. A program that
// outstays its time is ended with everything it started, because these runs are unattended.
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { ROOT } from './install.mjs';

/** @typedef {{ status: number, output: string, timedOut: boolean }} Run */

/**
 * @param {string} name
 * @returns {string} the path of a program that the installed packages bring
 */
export const bin = (name) => join(ROOT, 'node_modules', '.bin', name);

/**
 * @param {import('node:child_process').ChildProcess} child
 * @param {number} milliseconds
 */
function endAfter(child, milliseconds) {
  return setTimeout(() => {
    if (child.pid === undefined) return;
    try {
      process.kill(-child.pid, 'SIGKILL');
    } catch {
      child.kill('SIGKILL');
    }
  }, milliseconds);
}

/**
 * @param {string} program
 * @param {readonly string[]} args
 * @param {{ minutes?: number, env?: Record<string, string>, quiet?: boolean }} [options]
 * @returns {Promise<Run>}
 */
export function run(program, args, { minutes = 5, env = {}, quiet = false } = {}) {
  return new Promise((resolve) => {
    const child = spawn(program, [...args], {
      cwd: ROOT,
      env: { ...process.env, ...env },
      stdio: ['ignore', 'pipe', 'pipe'],
      detached: process.platform !== 'win32',
    });
    let output = '';
    /** @param {Buffer} part */
    const take = (part) => {
      output += part.toString();
      if (!quiet) process.stdout.write(part);
    };
    child.stdout.on('data', take);
    child.stderr.on('data', take);
    const timer = endAfter(child, minutes * 60_000);
    child.on('error', (error) => {
      clearTimeout(timer);
      console.error(error.message);
      resolve({ status: 127, output: error.message, timedOut: false });
    });
    child.on('close', (status, signal) => {
      clearTimeout(timer);
      resolve({ status: status ?? 1, output, timedOut: signal === 'SIGKILL' });
    });
  });
}
