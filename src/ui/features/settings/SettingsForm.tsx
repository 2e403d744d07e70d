import { setSettings } from "../../../design/edits/settings.ts";
import { SETTINGS, settingsOf } from "../../../design/settings.ts";
import { profileOf } from "../../../findings/limits.ts";
import { fieldMeta } from "../../../parts/fields.ts";
import { useApp } from "../../../store/app.ts";
import { OptionField } from "../../kit/fields/OptionField.tsx";
import { DeratingTable } from "./DeratingTable.tsx";
import { ProfileTable } from "./ProfileTable.tsx";
import styles from "./Settings.module.css";

type Key = keyof typeof SETTINGS.shape;

/** What makes up limits of one's own. */
const OWN = ["ownName", "ownSource", "ownLimits", "ownIsolation", "ownReserveDb"] as const;

/** What a design is judged under besides, and the figures of a condition while it counts. */
const CONDITIONS: readonly { readonly name: Key; readonly needs?: "judgeRain" | "judgeLift" }[] = [
  { name: "judgeRain" },
  { name: "rainPercent", needs: "judgeRain" },
  { name: "rainOf", needs: "judgeRain" },
  { name: "judgeLift" },
  { name: "liftRiseDb", needs: "judgeLift" },
  { name: "liftFadeDb", needs: "judgeLift" },
  { name: "judgeMasts" },
  { name: "judgeReceivers" },
];

/** What the open design is judged by and reckoned with; every change shows at once and can be undone. */
export function SettingsForm() {
  const settings = useApp((s) => settingsOf(s.design));
  const profile = useApp((s) => profileOf(s.design));
  return (
    <div className={styles.settings}>
      <section aria-label="Limits">
        <Setting name="limits" />
        {settings.limits === "own" ? OWN.map((name) => <Setting key={name} name={name} />) : null}
        <ProfileTable profile={profile} />
        <Setting name="keepDb" />
      </section>
      <section aria-label="Conditions">
        {CONDITIONS.map(({ name, needs }) =>
          needs && !settings[needs] ? null : <Setting key={name} name={name} />,
        )}
      </section>
      <section aria-label="Amplifiers">
        <Setting name="derating" />
        <DeratingTable choice={settings.derating} />
        <Setting name="cascade" />
      </section>
      <section aria-label="Field outside">
        <Setting name="mastBand" />
        {settings.mastBand === "none"
          ? null
          : MAST[settings.mastFieldFrom].map((name) => <Setting key={name} name={name} />)}
        <Setting name="cordlessDistanceM" />
      </section>
      <p className="quiet small">
        Kept with this design, in its file and its link. Whether limits of a standard or a law apply to your
        installation is for you and your local codes to say.
      </p>
    </div>
  );
}

/** What is asked of a mast, by where its field comes from. */
const MAST = {
  distance: ["mastFieldFrom", "mastDistanceM", "mastEirpDbm"],
  measured: ["mastFieldFrom", "mastDbuvPerM"],
} as const satisfies Record<string, readonly Key[]>;

function Setting({ name }: { readonly name: Key }) {
  const value = useApp((s) => settingsOf(s.design)[name]);
  const meta = fieldMeta(SETTINGS.shape[name]);
  if (!meta) return null;
  return (
    <OptionField
      meta={meta}
      value={value}
      onTakeBack={(visit) => useApp.getState().takeBack(visit)}
      onTry={(next, visit) => {
        const { design, change } = useApp.getState();
        const edit = setSettings(design, name, next);
        // The reason stands at the field; a notice as well would say it twice.
        if (!edit.ok) return edit.reason;
        change(edit, visit ? { merge: visit, lasts: true } : { merge: `setting ${name}` });
        return null;
      }}
    />
  );
}
