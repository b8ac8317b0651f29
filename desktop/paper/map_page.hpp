// The block map on one page of paper.
#pragma once

#include "paper/page.hpp"

#include "quick/block_map.hpp"

namespace bullace::paper {

// The map on a lying page, with a line at its foot: as of when its values are (`asOf`, a date and
// time in words) and that it is page 1 of 1. The picture's own notes say what was left out.
[[nodiscard]] QByteArray
blockMapPdf(const quick::BlockMapPicture& picture, PaperSize size, const QString& asOf);

// What blockMapPdf() paints, in a painter of `pxPerMm` units in a millimetre: for a preview.
void paintMapPage(QPainter& painter,
                  const quick::BlockMapPicture& picture,
                  PaperSize size,
                  const QString& asOf,
                  double pxPerMm);

} // namespace bullace::paper
