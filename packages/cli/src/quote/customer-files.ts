import { GeometryError } from "@scantling/geometry";
import type { CustomerModel, Drawing } from "@scantling/render";
import type { OutputFile } from "../deliver.js";
import { EXIT } from "../exit-code.js";
import { CommandFailure } from "../failure.js";
import type { Job } from "../load.js";
import { plainPaper } from "../paper-choice.js";
import { drawingFiles } from "../sheets/write-drawings.js";

/**
 * The customer's sheet as files: HTML, and PDF with its pages.
 *
 * @param paper - Left out: the shop's own.
 * @throws {CommandFailure} exit code 2 where it is no paper, or too small.
 */
export async function customerFiles(job: Job, model: CustomerModel, paper?: string): Promise<OutputFile[]> {
  const { customerPage } = await import("@scantling/render");
  const pages = await customerPages(job, model, paper);
  const name = `${job.name}.quote`;
  const title = `${[model.code, model.title].filter((part) => part !== "").join(" ")}: offer`;
  const [pdf] = await drawingFiles([{ name, title, pages }], "pdf", { name, title });
  return [
    { name: `${name}.html`, content: await customerPage(model) },
    ...(pdf === undefined ? [] : [{ name: pdf.name, content: pdf.content }]),
  ];
}

/** The pages of the PDF. */
export async function customerPages(job: Job, model: CustomerModel, paper?: string): Promise<Drawing[]> {
  const { customerSheet } = await import("@scantling/render");
  try {
    return customerSheet(model, plainPaper(job, paper));
  } catch (error) {
    if (!(error instanceof GeometryError)) throw error;
    throw new CommandFailure(
      EXIT.usage,
      error.code,
      error.message,
      "Give a larger paper, such as --paper a4.",
    );
  }
}
