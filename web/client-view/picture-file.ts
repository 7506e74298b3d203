import type { FreeScene } from '../../core/drawings/picture/scene';
import { sceneSvg } from '../../core/drawings/picture/scene-svg';
import type { Pictures } from '../../core/drawings/pictures';
import { toBase64 } from '../../core/job/photo-bytes';
import regular from '@fontsource/fira-sans/files/fira-sans-latin-400-normal.woff2?url';
import semiBold from '@fontsource/fira-sans/files/fira-sans-latin-600-normal.woff2?url';

/** px: what browsers still paint in one canvas, and more than any printer asks of a picture on A3. */
export const leastWidth = 200;
export const mostWidth = 8000;

export function heightFor({ width, height }: FreeScene, pixels: number): number {
  return Math.round((pixels * height) / width);
}

/** A scene as a PNG of exactly so many pixels, painted by the browser from the same drawing that is on the screen. */
export async function pictureFile(
  scene: FreeScene,
  pixels: number,
  { cut, named, pictures }: { readonly cut: number; readonly named: boolean; readonly pictures: Pictures },
): Promise<Blob> {
  const { width, height } = scene;
  const addressOf = (photo: string) => {
    const picture = pictures.get(photo);
    return picture ? `data:${picture.type};base64,${toBase64(picture.bytes)}` : null;
  };
  const drawn = named ? scene : { ...scene, names: [], magnetLines: [] };
  const svg = sceneSvg(drawn, { id: 'scene', width, height, label: '', cut, addressOf });
  const [wide, high] = [pixels, heightFor(scene, pixels)];
  // A picture of its own fetches nothing: its fonts go into it.
  const style = `<style>${(await Promise.all([face(400, regular), face(600, semiBold)])).join('')}</style>`;
  const whole = svg
    .replace('<svg ', `<svg width="${wide}" height="${high}" preserveAspectRatio="none" `)
    .replace('<defs>', `${style}<defs>`);
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(whole)}`;
  await image.decode();
  const canvas = document.createElement('canvas');
  canvas.width = wide;
  canvas.height = high;
  canvas.getContext('2d')!.drawImage(image, 0, 0, wide, high);
  return new Promise((resolve, reject) => {
    canvas.toBlob(
      (blob) =>
        blob
          ? resolve(blob)
          : reject(new Error(`the browser cannot paint ${wide} × ${high} px: ask for fewer`)),
      'image/png',
    );
  });
}

async function face(weight: 400 | 600, address: string): Promise<string> {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`a font could not be loaded (${response.status})`);
  const bytes = new Uint8Array(await response.arrayBuffer());
  return `@font-face{font-family:"Fira Sans";font-weight:${weight};src:url(data:font/woff2;base64,${toBase64(bytes)})}`;
}
