import { Check, X } from "lucide-react";
import { useMemo } from "react";
import { carriersOffered } from "../../../findings/walk/choice.ts";
import type { ToldWay } from "../../../sentences/walk/signal.ts";
import { useApp } from "../../../store/app.ts";
import { changeWalk } from "../../kit/asked/walking.ts";
import { megahertz } from "../../kit/format.ts";
import { dashOf } from "./dashes.ts";
import { type ShownSignal, sameCarrier } from "./walk.ts";

/** The carriers that are walked: the lowest, the highest, the worst, and whichever were added. One is followed. */
export function CarrierChoice({ shown }: { readonly shown: ShownSignal }) {
  const { walking, ways, way } = shown;
  return (
    <fieldset className="chips carrier-choice">
      <legend className="unseen">Carriers</legend>
      {ways.map((one, n) => (
        <span key={`${one.carrier.origin}#${one.carrier.index}`} className="carrier-chip">
          <button
            type="button"
            className="chip"
            aria-pressed={one === way}
            onClick={() => changeWalk({ followed: one.carrier })}
          >
            <span className={one.got ? "verdict-mark ok" : "verdict-mark bad"}>
              {one.got ? <Check size={12} aria-hidden /> : <X size={12} aria-hidden />}
              <span className="unseen">{one.got ? "Arrives: " : "Lost: "}</span>
            </span>
            <strong>{one.name}</strong>
            <span className="quiet">{whyWalked(one, shown)}</span>
            <svg width={26} height={8} aria-hidden="true">
              <path
                className={one === way ? "swatch followed" : "swatch"}
                d="M0 4H26"
                strokeDasharray={one === way ? undefined : dashOf(n)}
              />
            </svg>
          </button>
          {walking.extra.some((id) => sameCarrier(id, one.carrier)) ? (
            <button
              type="button"
              className="button icon bare"
              aria-label={`Leave out ${one.name}`}
              onClick={() =>
                changeWalk({
                  extra: walking.extra.filter((id) => !sameCarrier(id, one.carrier)),
                  followed: null,
                })
              }
            >
              <X size={14} aria-hidden />
            </button>
          ) : null}
        </span>
      ))}
      <Further shown={shown} />
    </fieldset>
  );
}

/** Adds any other carrier of the service. */
function Further({ shown }: { readonly shown: ShownSignal }) {
  const evaluation = useApp((s) => s.evaluation);
  const { walking, ways } = shown;
  const { place, service } = walking;
  const offered = useMemo(() => {
    const record = evaluation.record(place.part);
    return record ? carriersOffered(evaluation, record, { service }) : [];
  }, [evaluation, place, service]);
  const left = offered.filter((c) => !ways.some((w) => sameCarrier(w.carrier, c.carrier)));
  if (left.length === 0) return null;
  return (
    <select
      className="field-input further-carrier"
      aria-label="Another carrier"
      value=""
      onChange={(event) => {
        const chosen = left[Number(event.target.value)];
        if (chosen) changeWalk({ extra: [...walking.extra, chosen.carrier], followed: chosen.carrier });
      }}
    >
      <option value="">Another carrier…</option>
      {left.map(({ carrier, planned }, n) => (
        <option key={`${carrier.origin}#${carrier.index}`} value={n}>
          {planned.name} · {megahertz(planned.airMHz)} MHz
        </option>
      ))}
    </select>
  );
}

/** "lowest", "highest, worst"; "added" for one that was asked for. */
export function whyWalked(way: ToldWay, { ways, walking }: Pick<ShownSignal, "ways" | "walking">): string {
  const usual = ways.filter((w) => !walking.extra.some((id) => sameCarrier(id, w.carrier)));
  if (!usual.includes(way)) return "added";
  const worst = [...usual].sort((a, b) => standing(a) - standing(b))[0];
  return [
    ...(way === usual[0] ? ["lowest"] : []),
    ...(way === usual.at(-1) ? ["highest"] : []),
    ...(way === worst ? ["worst"] : []),
  ].join(", ");
}

function standing({ got, end }: ToldWay): number {
  return got ? (end?.marginDb ?? 0) : Number.NEGATIVE_INFINITY;
}
