import regularAddress from "@expo-google-fonts/ibm-plex-sans/400Regular/IBMPlexSans_400Regular.ttf?url";
import boldAddress from "@expo-google-fonts/ibm-plex-sans/600SemiBold/IBMPlexSans_600SemiBold.ttf?url";
import type { Job } from "@pintle/job";
import { type PackOfJob, packOf } from "@pintle/papers";
import { expose } from "comlink";

const bytesAt = async (address: string): Promise<Uint8Array> =>
  new Uint8Array(await (await fetch(address)).arrayBuffer());

const papers = {
  /** The papers of a job as files; the day of issue is given in ms since 1970. */
  async pack(job: Job, dayMs: number, fromOtherSide: boolean): Promise<PackOfJob> {
    const [regular, bold] = await Promise.all([bytesAt(regularAddress), bytesAt(boldAddress)]);
    return packOf(job, {
      fonts: { regular, bold },
      date: new Date(dayMs),
      standsOn: fromOtherSide ? "otherSide" : "ramSide",
    });
  },
};

export type Papers = typeof papers;

expose(papers);
