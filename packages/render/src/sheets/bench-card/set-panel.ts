import type { CardPanel, CardSide } from "../../models/card-model.js";
import { type Area, columnWidth, type FlowPanel } from "./flow.js";
import { CARD_LETTERINGS, type CardLettering } from "./lettering.js";
import { cardPanel, partPanel } from "./panel.js";

/** A panel with the part of the work that it belongs to, numbered. */
export interface Numbered {
  readonly side: CardSide;
  readonly panel: CardPanel;
}

export type SetPanel = (panel: Numbered, letters: CardLettering) => FlowPanel;

/**
 * As narrow as a column where a panel's figures stand in one beside one another, else as wide as the page; each set once.
 */
export function panelSetter(area: Area): SetPanel {
  const full = area.top - area.bottom;
  const known = new Map<CardLettering, Map<Numbered, FlowPanel>>(
    CARD_LETTERINGS.map((letters) => [letters, new Map()]),
  );
  return (numbered, letters) => {
    const before = known.get(letters)?.get(numbered);
    if (before !== undefined) return before;
    const setAs = (wide: boolean): FlowPanel => {
      const width = wide ? area.right - area.left : columnWidth(area);
      return partable(numbered, { width, wide, full }, letters);
    };
    const inColumn = numbered.panel.wide === true ? undefined : setAs(false);
    const fits =
      inColumn !== undefined && goesAcross(inColumn, columnWidth(area)) && goesDown(inColumn, full);
    const made = fits ? inColumn : setAs(true);
    known.get(letters)?.set(numbered, made);
    return made;
  };
}

const goesAcross = ({ placed }: FlowPanel, width: number): boolean => (placed.least ?? 0) <= width;

/** Whether all of a panel goes on pages, in parts where it must. */
function goesDown(panel: FlowPanel, full: number): boolean {
  if (panel.placed.height <= full) return true;
  const parts = panel.part(full);
  return parts !== undefined && goesDown(parts[1], full);
}

/** In it no room is left for the sake of looks. */
const smallest = CARD_LETTERINGS.at(-1);

/** How a panel is set. */
interface Setting {
  readonly width: number;
  readonly wide: boolean;
  /** Height of a page, mm. */
  readonly full: number;
}

function partable({ side, panel }: Numbered, setting: Setting, letters: CardLettering): FlowPanel {
  const { width, wide, full } = setting;
  const placed = cardPanel(panel, width, letters);
  const isHigh = placed.height > full;
  const known = new Map<number, ReturnType<FlowPanel["part"]>>();
  const partIn = (room: number): ReturnType<FlowPanel["part"]> => {
    const parts = partPanel(panel, room, width, letters, letters === smallest || (isHigh && room >= full));
    return parts === undefined
      ? undefined
      : [
          partable({ side, panel: parts[0] }, setting, letters),
          partable({ side, panel: parts[1] }, setting, letters),
        ];
  };
  const part: FlowPanel["part"] = (room) => {
    if (!known.has(room)) known.set(room, partIn(room));
    return known.get(room);
  };
  return { side, placed, wide, part };
}
