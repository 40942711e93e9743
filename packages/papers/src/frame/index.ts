export { framed, roomOf, type FrameWords, type PaperSize } from "./sheet-frame.ts";
export { northArrow, pictureScale, roundScale, scaleBar, type Scale } from "./scale.ts";
