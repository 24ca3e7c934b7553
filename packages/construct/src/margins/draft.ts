/** Figures in the making: a copy whose numbers inputs may move, and how far the bone's readings are off. */
import { changed, type Profile, type ProfileStation } from '@bonewright/bone';
import type { Figures } from '../model/figures.ts';

export interface Draft {
  readonly figures: Figures;
  /** Standard deviations by which the outer width of every station is off. */
  outerZ: number;
  /** The same for the canal, read in three places: at the fracture and towards either end. */
  readonly canalZ: { proximal: number; fracture: number; distal: number };
}

export function draftOf(nominal: Figures): Draft {
  const figures: Figures = {
    ...nominal,
    pins: nominal.pins.map((p) => ({ ...p })),
    im: nominal.im && { ...nominal.im },
    columns: nominal.columns.map((c) => ({ ...c })),
  };
  return { figures, outerZ: 0, canalZ: { proximal: 0, fracture: 0, distal: 0 } };
}

/** The draft's figures with the bone as read. `middleMm`: the fracture. */
export function settled({ figures, outerZ, canalZ }: Draft, nominal: Profile, middleMm: number): Figures {
  const { proximal, fracture, distal } = canalZ;
  if (outerZ === 0 && proximal === 0 && fracture === 0 && distal === 0) return figures;
  const canalBy = (station: ProfileStation) => {
    const isProximal = station.sMm < middleMm;
    const reach = isProximal ? middleMm : nominal.lengthMm - middleMm;
    const away = Math.min(1, Math.abs(station.sMm - middleMm) / reach);
    return station.canalSdMm * (fracture * (1 - away) + (isProximal ? proximal : distal) * away);
  };
  figures.profile = changed(nominal, (station) => outerZ * station.sdMm, canalBy);
  return figures;
}
