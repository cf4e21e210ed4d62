/** Which photos are there of this, and how does one come in or go? They stay on this machine, beside the documents. */
import { say } from "@coldset/core/texts";
import { type FormEvent, useCallback, useEffect, useId, useRef, useState } from "react";
import { changePhoto, loadPhotos, type Photo, type PhotoAnswer, pictureAddress, sendPhoto } from "../state/photos.js";

interface PhotosProps {
  readonly kind: string;
  readonly id: string;
  /** "the donor" */
  readonly of: string;
}

const NOT_REACHED = say("web.copies.the-server-does-not-answer-nothing");

export function Photos({ kind, id, of }: PhotosProps) {
  const [photos, setPhotos] = useState<readonly Photo[]>([]);
  const [said, setSaid] = useState("");
  const [wrong, setWrong] = useState<readonly string[]>([]);
  const heading = useId();
  const told = useCallback(<T,>(answer: PhotoAnswer<T>, words: string): answer is { kind: "done"; value: T } => {
    setSaid(answer.kind === "done" ? words : "");
    setWrong(answer.kind === "done" ? [] : answer.kind === "refused" ? answer.messages : [NOT_REACHED]);
    return answer.kind === "done";
  }, []);
  const load = useCallback(async () => {
    const answer = await loadPhotos(kind, id);
    if (answer.kind === "done") setPhotos(answer.value);
  }, [kind, id]);
  useEffect(() => void load(), [load]);
  const change = async (photo: Photo, takenAway: boolean) => {
    const answer = await changePhoto(photo.photo, { takenAway });
    if (told(answer, takenAway ? say("web.photos.taken-away-it-is-kept-and") : say("web.photos.put-back")))
      await load();
  };
  const shown = photos.filter((p) => p.takenAwayAt === null);
  const away = photos.filter((p) => p.takenAwayAt !== null);
  return (
    <section aria-labelledby={heading} className="photos">
      <h2 className="sec" id={heading}>
        {say("web.photos.photos-of")}
        {of}
      </h2>
      {shown.length === 0 ? <p className="words">{say("web.photos.there-is-no-photo-yet")}</p> : null}
      <ul>
        {shown.map((p) => (
          <li key={p.photo}>
            <a href={pictureAddress(p.photo)} target="_blank" rel="noopener">
              <img src={pictureAddress(p.photo)} alt={captionOf(p, of)} loading="lazy" />
            </a>
            <p>
              {p.place === null ? null : <b>{p.place}. </b>}
              {p.caption}
            </p>
            <button type="button" className="btn" onClick={() => void change(p, true)}>
              {say("web.photos.take-away")}
              <span className="hide">: {captionOf(p, of)}</span>
            </button>
          </li>
        ))}
      </ul>
      <AddPhoto
        add={async (given) => {
          const done = told(await sendPhoto(kind, id, given), say("web.photos.the-photo-is-kept"));
          if (done) await load();
          return done;
        }}
      />
      <p role="status" className={said === "" ? "hide" : "line"}>
        {said}
      </p>
      {wrong.length === 0 ? null : (
        <div role="alert" className="trouble">
          <p className="bad">{say("web.photos.the-photo-was-not-kept")}</p>
          <ul className="bullets">
            {wrong.map((w) => (
              <li key={w}>{w}</li>
            ))}
          </ul>
        </div>
      )}
      {away.length === 0 ? null : (
        <details>
          <summary>
            {say("web.photos.taken-away")}
            {away.length}
          </summary>
          <ul>
            {away.map((p) => (
              <li key={p.photo}>
                <p>{captionOf(p, of)}</p>
                <button type="button" className="btn" onClick={() => void change(p, false)}>
                  {say("web.history.put-back")}
                  <span className="hide">: {captionOf(p, of)}</span>
                </button>
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

const captionOf = (p: Photo, of: string) =>
  [p.place, p.caption].filter((words) => words !== null && words !== "").join(", ") ||
  say("web.photos.photo-of", { of });

interface NewPhoto {
  readonly file: Blob;
  readonly place: string;
  readonly caption: string;
}

function AddPhoto({ add }: { readonly add: (given: NewPhoto) => Promise<boolean> }) {
  const id = useId();
  const file = useRef<HTMLInputElement>(null);
  const [place, setPlace] = useState("");
  const [caption, setCaption] = useState("");
  const [sending, setSending] = useState(false);
  const [missing, setMissing] = useState(false);
  const send = async (event: FormEvent) => {
    event.preventDefault();
    const chosen = file.current?.files?.[0];
    setMissing(chosen === undefined);
    if (chosen === undefined || sending) return;
    setSending(true);
    const done = await add({ file: chosen, place, caption });
    setSending(false);
    if (!done) return;
    setPlace("");
    setCaption("");
    if (file.current !== null) file.current.value = "";
  };
  return (
    <form onSubmit={(event) => void send(event)} noValidate className="grid">
      <div className="field">
        <label htmlFor={`${id}-file`}>{say("web.photos.choose-or-take-a-photo")}</label>
        <div className="box">
          <input
            id={`${id}-file`}
            ref={file}
            type="file"
            accept="image/jpeg,image/png,image/webp"
            capture="environment"
            aria-describedby={`${id}-file-as`}
            aria-invalid={missing ? true : undefined}
          />
        </div>
        <p className={missing ? "as bad" : "as"} id={`${id}-file-as`}>
          {missing ? say("web.photos.choose-a-photo-first") : say("web.photos.jpeg-png-or-webp-12-mb")}
        </p>
      </div>
      <div className="field">
        <label htmlFor={`${id}-place`}>
          {say("web.photos.what-it-shows")}
          <small className="soft">{say("web.photos.a-part-a-place-a-reading")}</small>
        </label>
        <div className="box">
          <input
            id={`${id}-place`}
            value={place}
            maxLength={80}
            autoComplete="off"
            onChange={(event) => setPlace(event.currentTarget.value)}
          />
        </div>
        <p className="as">{say("web.photos.left-empty-the-whole")}</p>
      </div>
      <div className="field">
        <label htmlFor={`${id}-caption`}>{say("web.photos.in-words")}</label>
        <div className="box">
          <input
            id={`${id}-caption`}
            value={caption}
            maxLength={300}
            autoComplete="off"
            onChange={(event) => setCaption(event.currentTarget.value)}
          />
        </div>
        <p className="as">{say("web.photos.what-somebody-should-see-in-it")}</p>
      </div>
      <p className="acts">
        <button type="submit" className="btn" aria-disabled={sending}>
          {sending ? say("web.photos.keeping-it") : say("web.photos.keep-the-photo")}
        </button>
      </p>
    </form>
  );
}
