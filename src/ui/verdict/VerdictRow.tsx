import { Check, ChevronDown, ChevronUp, X } from "lucide-react";
import { memo, useId, useState } from "react";
import type { ServiceVerdict, Verdict } from "../../findings/finding.ts";
import { usePart } from "../../store/hooks.ts";
import { decimal, levelRange } from "../format.ts";
import { selectFromPane } from "../reveal.ts";

/** A receiver or an outlet: works or not in one sentence, and on request what it gets of each service. */
export const VerdictRow = memo(function VerdictRow({ verdict }: { readonly verdict: Verdict }) {
  const id = useId();
  const [isOpen, setOpen] = useState(false);
  const label = usePart(verdict.part)?.label ?? verdict.part;
  return (
    <li className="verdict-row">
      <div className="verdict-line">
        <button
          type="button"
          className="verdict-press"
          onClick={() => selectFromPane({ parts: [verdict.part] })}
        >
          <span className={verdict.works ? "verdict-mark ok" : "verdict-mark bad"}>
            {verdict.works ? <Check size={16} aria-hidden /> : <X size={16} aria-hidden />}
            <span className="unseen">{verdict.works ? "Works: " : "Fails: "}</span>
          </span>
          <span className="verdict-words">
            <strong>{label}</strong>
            <span>{verdict.sentence}</span>
          </span>
        </button>
        {verdict.services.length > 0 ? (
          <button
            type="button"
            className="button icon bare"
            aria-label={`Services of ${label}`}
            aria-expanded={isOpen}
            aria-controls={id}
            onClick={() => setOpen(!isOpen)}
          >
            {isOpen ? <ChevronUp size={16} aria-hidden /> : <ChevronDown size={16} aria-hidden />}
          </button>
        ) : null}
      </div>
      <div id={id} className="verdict-details" hidden={!isOpen}>
        <ServiceTable services={verdict.services} />
      </div>
    </li>
  );
});

export function ServiceTable({ services }: { readonly services: readonly ServiceVerdict[] }) {
  return (
    <table className="service-table">
      <thead>
        <tr>
          <th scope="col">Service</th>
          <th scope="col">Got</th>
          <th scope="col">Level</th>
          <th scope="col">C/N, least</th>
        </tr>
      </thead>
      <tbody>
        {services.map((service) => (
          <ServiceRows key={service.name} service={service} />
        ))}
      </tbody>
    </table>
  );
}

function ServiceRows({ service }: { readonly service: ServiceVerdict }) {
  const complete = service.carriersGot === service.carriersWanted;
  return (
    <>
      <tr>
        <th scope="row">{service.name}</th>
        <td className={complete ? "number" : "number short-of"}>
          {service.carriersGot} of {service.carriersWanted}
        </td>
        <td className="number">{levelRange(service.levelMin, service.levelMax)}</td>
        <td className="number">{service.cnMin === undefined ? "–" : `${decimal(service.cnMin)} dB`}</td>
      </tr>
      {service.reasons.map((reason) => (
        <tr key={reason}>
          <td colSpan={4} className="service-reason">
            {reason}
          </td>
        </tr>
      ))}
    </>
  );
}
