/** Files on their way in: chosen, dropped (folders too) or pasted. */
import { InputError } from '@bonewright/fault';
import { LARGEST_FILE_BYTES } from '@bonewright/film';

export interface Incoming {
  /** With the folders it lies in, where it came in one. */
  readonly name: string;
  /** Chosen by itself: what it is not is said. Out of a folder or a ZIP, what is no film is only counted. */
  readonly isChosen: boolean;
  readonly file: File;
}

/** A folder with more than this was not meant. */
const MOST_FILES = 2000;

export const chosenFiles = (files: Iterable<File>): Incoming[] =>
  [...files].map((file) => ({
    name: file.webkitRelativePath || file.name,
    isChosen: file.webkitRelativePath === '',
    file,
  }));

/** What was dropped, folders read to the bottom. Has to be called while the drop is handled. */
export async function droppedFiles(data: DataTransfer): Promise<Incoming[]> {
  const entries = [...data.items].map((item) => item.webkitGetAsEntry());
  if (!entries.some((entry) => entry?.isDirectory)) return chosenFiles(data.files);
  const found: Incoming[] = [];
  for (const entry of entries) if (entry) await collect(entry, found, true);
  return found;
}

async function collect(entry: FileSystemEntry, found: Incoming[], isChosen: boolean): Promise<void> {
  if (found.length >= MOST_FILES) return;
  if (isFile(entry)) {
    const file = await new Promise<File>((resolve, reject) => entry.file(resolve, reject));
    found.push({ name: entry.fullPath.replace(/^\//, ''), isChosen, file });
  } else if (isFolder(entry)) {
    for (const inside of await entriesOf(entry)) await collect(inside, found, false);
  }
}

const isFile = (entry: FileSystemEntry): entry is FileSystemFileEntry => entry.isFile;
const isFolder = (entry: FileSystemEntry): entry is FileSystemDirectoryEntry => entry.isDirectory;

/** A reader hands a folder out in parts; an empty part is the end. */
async function entriesOf(folder: FileSystemDirectoryEntry): Promise<FileSystemEntry[]> {
  const reader = folder.createReader();
  const all: FileSystemEntry[] = [];
  for (;;) {
    const part = await new Promise<FileSystemEntry[]>((resolve, reject) => reader.readEntries(resolve, reject));
    if (part.length === 0) return all;
    all.push(...part);
  }
}

/** Throws InputError for a file that is larger than any film, before it is read. */
export async function bytesOf({ name, file }: Incoming): Promise<Uint8Array<ArrayBuffer>> {
  if (file.size > LARGEST_FILE_BYTES)
    throw new InputError(
      `${name} has ${Math.round(file.size / 2 ** 20)} MiB`,
      '',
      `give a film of at most ${LARGEST_FILE_BYTES / 2 ** 20} MiB`,
    );
  return new Uint8Array(await file.arrayBuffer());
}
