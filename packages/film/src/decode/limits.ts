/** What one film may cost at most, whatever its header claims: the bound on memory wherever no worker sets one. */

export const LARGEST_FILE_BYTES = 200 * 1024 * 1024;
/** A compressed body (deflated data set, PNG, TIFF strip) may unpack to no more than this. */
export const LARGEST_UNPACKED_BYTES = 200 * 1024 * 1024;
/** Rows times columns times samples times frames. */
export const MOST_VALUES = 60_000_000;
/** DICOM data elements, those inside sequences included. */
export const MOST_ELEMENTS = 200_000;
export const MOST_TOP_LEVEL_ELEMENTS = 20_000;
export const MOST_JPEG_2000_TILES = 4096;

/** The one hint for a file that is damaged beyond what anybody can mend here. */
export const EXPORT_AGAIN = 'export the film again from where it came';
/** A ZIP is unpacked one file at a time; more than this in all is no practice's folder of films. */
export const MOST_ZIP_BYTES = 2 * 1024 * 1024 * 1024;
export const MOST_ZIP_FILES = 2000;
