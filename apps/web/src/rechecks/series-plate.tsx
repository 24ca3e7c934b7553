/** One film of a series, to look at: dragged, zoomed and levelled, never marked. */
import { useSize } from '../drawing/use-size.ts';
import type { OpenFilm } from '../films/engine/open-film.ts';
import type { FourClicks } from '../films/marks/working.ts';
import { FilmCanvas } from '../films/plate/film-canvas.tsx';
import { dragged, type Levels, swapped } from '../films/plate/looking.ts';
import { plateKey } from '../films/plate/plate-keys.ts';
import { useLooking } from '../films/plate/use-looking.ts';
import { usePicture } from '../films/plate/use-picture.ts';
import { usePlateHand } from '../films/plate/use-plate-hand.ts';
import { useView } from '../films/plate/use-view.ts';
import { visiblePart } from '../films/plate/visible.ts';

interface SeriesPlateProps {
  readonly film: OpenFilm;
  readonly name: string;
  readonly clicks: FourClicks;
  /** Shared by all films of the series. */
  readonly levels: Levels;
  readonly onLevels: (levels: Levels) => void;
}

export function SeriesPlate({ film, name, clicks, levels, onLevels }: SeriesPlateProps) {
  const { facts } = film;
  const [plate, size] = useSize<HTMLDivElement>();
  const { looking } = useLooking(film, clicks, levels);
  const { view, zoom, pan, seeWhole, quarter, flip } = useView(facts, size, clicks, true);
  const part = size.width > 0 ? visiblePart(view, size, facts, devicePixelRatio) : null;
  const picture = usePicture(film, looking.look, part);
  const hand = usePlateHand(plate, {
    onClick: () => undefined,
    onPan: pan,
    onWindow: (dx, dy) => onLevels(dragged(levels, dx, dy)),
    onZoom: zoom,
  });
  return (
    <div
      ref={plate}
      className="series-plate"
      role="application"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: the plate is worked with the arrow keys
      tabIndex={0}
      aria-label={`${name}. Arrow keys move the film, plus and minus zoom, 0 shows it whole, I inverts all, R turns, H flips`}
      onKeyDown={(event) => {
        if (event.ctrlKey || event.metaKey || event.altKey) return;
        const act = plateKey(event);
        if (!act || act.kind === 'place' || act.kind === 'target' || act.kind === 'put-away') return;
        event.preventDefault();
        if (act.kind === 'step') pan(-act.dx, -act.dy);
        else if (act.kind === 'zoom') zoom([size.width / 2, size.height / 2], act.factor);
        else if (act.kind === 'whole') seeWhole();
        else if (act.kind === 'swap') onLevels(swapped(levels));
        else if (act.kind === 'turn') quarter();
        else flip();
      }}
      {...hand}
    >
      <FilmCanvas picture={picture} view={view} plate={size} />
      {picture === null && <p className="plate-wait">Drawing the film</p>}
    </div>
  );
}
