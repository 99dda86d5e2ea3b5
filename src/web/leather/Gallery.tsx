import { PictureView } from "./PictureView.tsx";
import type { Pictures } from "./usePictures.ts";

type GalleryProps = {
  readonly pictures: Pictures;
  /** What is said when they are there: "4 sheets". */
  readonly said: string;
  /** Said while the first ones are made. */
  readonly wait: string;
  /** Of which kind they are: the style sheet's word. */
  readonly kind: string;
};

const statusOf = ({ pictures, said, wait }: GalleryProps): string => {
  if (pictures.message !== "") return pictures.message;
  return pictures.busy ? wait : said;
};

/** Pictures below each other, or in rows where they are small, each with its name. */
export function Gallery(props: GalleryProps) {
  const { pictures, kind } = props;
  return (
    <>
      <p class="leather-said" role="status">
        {statusOf(props)}
      </p>
      <div class={`gallery gallery-${kind}${pictures.busy ? " busy" : ""}`}>
        {pictures.list.map((picture, i) => (
          <figure key={i}>
            <PictureView picture={picture} />
            <figcaption>{kind === "sheets" ? picture.says : picture.title}</figcaption>
          </figure>
        ))}
      </div>
    </>
  );
}
