import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Is there an `ffmpeg` with an H.264 encoder that looks ahead? */
export function canPack(): boolean {
  const { stdout, status } = spawnSync('ffmpeg', ['-hide_banner', '-encoders'], { encoding: 'utf8' });
  return status === 0 && stdout.includes('libx264');
}

/**
 * Packs a film small in two passes. The encoder of a browser spends its bits evenly and smears quick movements;
 * one that has seen the whole film first does not. Frames and their times stay as they are.
 * @param bitrate bits a second, on average over the film
 */
export function packFilm(from: string, to: string, bitrate: number): void {
  const folder = mkdtempSync(join(tmpdir(), 'film-'));
  const common = ['-hide_banner', '-loglevel', 'error', '-y', '-i', from, '-an', '-map_metadata', '-1'];
  const picture = ['-c:v', 'libx264', '-preset', 'veryslow', '-b:v', String(bitrate), '-bf', '0', '-g', '90'];
  const log = ['-passlogfile', join(folder, 'pass'), '-pix_fmt', 'yuv420p', '-fflags', '+bitexact'];
  try {
    for (const pass of ['1', '2']) {
      const end =
        pass === '1' ? ['-f', 'null', '-'] : ['-video_track_timescale', '30', '-movflags', '+faststart', to];
      const { status, stderr } = spawnSync('ffmpeg', [...common, ...picture, ...log, '-pass', pass, ...end], {
        encoding: 'utf8',
      });
      if (status !== 0) throw new Error(`the film could not be packed: ${stderr}`);
    }
  } finally {
    rmSync(folder, { recursive: true });
  }
}
