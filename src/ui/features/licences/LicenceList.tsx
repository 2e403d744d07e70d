import { useEffect, useState } from "react";
import type { LicenceNotice } from "../../../build/licenceTexts.ts";
import styles from "./Licences.module.css";

/** What others have made and this page uses, each with its licence. */
export function LicenceList() {
  const [packages, setPackages] = useState<readonly LicenceNotice[] | null>(null);
  const [hasFailed, setFailed] = useState(false);
  useEffect(() => {
    import("./packages.ts").then(
      ({ packagesOfOthers }) => setPackages(packagesOfOthers()),
      () => setFailed(true),
    );
  }, []);
  if (hasFailed)
    return <p role="alert">The list could not be loaded. Reload the page and open the list again.</p>;
  if (packages === null) return <p className="quiet">Loading the list…</p>;
  return (
    <div className={styles.licences}>
      <p>
        Downlead is free software under the MIT licence. It is built with the packages below, with thanks to
        those who wrote them. Each has its own licence, given in full.
      </p>
      {packages.map(({ name, version, identifier, text, source }) => (
        <details key={`${name} ${version}`}>
          <summary>
            <strong>{name}</strong> <span className="quiet">{version}</span>
            <span className={styles.name}>{identifier}</span>
          </summary>
          {source ? <p>{source}</p> : null}
          <pre>{text}</pre>
        </details>
      ))}
    </div>
  );
}
