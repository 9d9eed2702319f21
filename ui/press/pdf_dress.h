#pragma once

#include "ui/press/pdf.h"

namespace crosstick::press {

/// Everything round the marks, by libqpdf: exact page boxes, layers, registered ground, print scaling, dates, ID.
/// @param raw  what QPdfWriter made of the pages, one page each
[[nodiscard]] Result<std::string> dressed(const std::string& raw, const std::vector<PdfPage>& pages,
                                          const PdfFacts& facts);

}  // namespace crosstick::press
