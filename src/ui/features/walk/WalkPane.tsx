import { Printer, X } from "lucide-react";
import { type KeyboardEvent, useEffect, useRef } from "react";
import { serviceNameIn } from "../../../sentences/serviceWords.ts";
import { useApp } from "../../../store/app.ts";
import { walkPlaces, walkServicesAt } from "../../kit/asked/places.ts";
import { changeWalk, endWalk, suppliedIn, type WalkState, type WalkView } from "../../kit/asked/walking.ts";
import { IconButton } from "../../kit/IconButton.tsx";
import { SignalBody } from "./SignalBody.tsx";
import { StepBar } from "./StepBar.tsx";
import { SupplyBody } from "./SupplyBody.tsx";
import { handleWalkKey } from "./steps.ts";
import type { ShownWalk } from "./walk.ts";
import "../origin/origin.css";
import "./walk.css";

const VIEWS: readonly { readonly view: WalkView; readonly name: string }[] = [
  { view: "signal", name: "Signal" },
  { view: "supply", name: "Supply and command" },
];

/** A walk along the chain: the signal from the roof to a socket, or the supply from a receiver up to the roof. */
export function WalkPane({ shown }: { readonly shown: ShownWalk }) {
  const { walking } = shown;
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  const press = (event: KeyboardEvent) => {
    if (event.key === "Escape") endWalk();
    // A list of choices needs its arrow keys itself.
    else if (event.target instanceof HTMLSelectElement || !handleWalkKey(event.key)) return;
    event.preventDefault();
    event.stopPropagation();
  };
  return (
    <section className="origin walk" aria-label="Walk" onKeyDown={press}>
      <header className="origin-head walk-head">
        <h2 ref={heading} tabIndex={-1}>
          Walk
        </h2>
        <fieldset className="walk-views">
          <legend className="unseen">What is walked</legend>
          {VIEWS.map(({ view, name }) => (
            <button
              key={view}
              type="button"
              className="chip"
              aria-pressed={walking.view === view}
              onClick={() => changeWalk({ view })}
            >
              {name}
            </button>
          ))}
        </fieldset>
        <div className="walk-choices">
          <PlaceChoice walking={walking} />
          {walking.view === "signal" ? <ServiceChoice walking={walking} /> : null}
        </div>
        <span className="spring" />
        <IconButton icon={Printer} name="Print" onPress={() => window.print()} />
        <IconButton icon={X} name="End the walk" onPress={endWalk} />
      </header>
      {shown.route.stops.length > 0 ? <StepBar shown={shown} /> : null}
      {shown.view === "signal" ? <SignalBody shown={shown} /> : <SupplyBody shown={shown} />}
    </section>
  );
}

function PlaceChoice({ walking }: { readonly walking: WalkState }) {
  const evaluation = useApp((s) => s.evaluation);
  const isSupplied = suppliedIn(evaluation);
  const all = walkPlaces(evaluation);
  const places = walking.view === "signal" ? all : all.filter(isSupplied);
  const isGone = !all.some((p) => p.key === walking.place.key);
  return (
    <label className="walk-choice">
      <span className="walk-to">{walking.view === "signal" ? "To" : "From"}</span>
      <select
        className="field-input"
        value={walking.place.key}
        onChange={(event) => {
          const place = places.find((p) => p.key === event.target.value);
          if (!place) return;
          const services = walkServicesAt(evaluation, place);
          const service = services.includes(walking.service) ? walking.service : services[0];
          changeWalk({ place, service: service ?? walking.service, extra: [], followed: null, branch: null });
        }}
      >
        {places.some((p) => p.key === walking.place.key) ? null : (
          <option value={walking.place.key}>
            {walking.place.label} {isGone ? "(gone)" : "(no supply)"}
          </option>
        )}
        {(["receiver", "outlet"] as const).map((role) => (
          <optgroup key={role} label={role === "receiver" ? "Receivers" : "Outlets"}>
            {places
              .filter((p) => p.role === role)
              .map((p) => (
                <option key={p.key} value={p.key}>
                  {p.label}
                </option>
              ))}
          </optgroup>
        ))}
      </select>
    </label>
  );
}

function ServiceChoice({ walking }: { readonly walking: WalkState }) {
  const evaluation = useApp((s) => s.evaluation);
  const services = walkServicesAt(evaluation, walking.place);
  return (
    <span className="walk-choice">
      <select
        className="field-input"
        aria-label="Service"
        value={walking.service}
        onChange={(event) => {
          const service = services.find((s) => s === event.target.value);
          if (service) changeWalk({ service, extra: [], followed: null });
        }}
      >
        {services.map((service) => (
          <option key={service} value={service}>
            {serviceNameIn(evaluation, service)}
          </option>
        ))}
      </select>
    </span>
  );
}
