#pragma once

#include <string>
#include <vector>

#include "core/film/paper.h"
#include "ui/press/route_card_letters.h"
#include "ui/press/route_card_words.h"

namespace crosstick::press {

// An A4 page lying, in millimetres from its upper left corner.
inline constexpr double kPageWidth = 297;
inline constexpr double kPageLeft = 8;
inline constexpr double kPageRight = kPageWidth - kPageLeft;
inline constexpr double kPageFoot = 196;  ///< what stands over the two rows of the source ends here
inline constexpr double kThinPen = 0.25;
inline constexpr double kThickPen = 0.5;

/// What stands round a table or a picture on such a page.
struct PaperHead {
    std::string title;    ///< "RTE QUILL"
    std::string purpose;  ///< one line under it
    std::string kind;     ///< "MARCH TABLE"
    std::string marking;  ///< at top and foot
    std::vector<CardFact> left, right;
    std::string source;  ///< at the foot, two rows at most
};

/// One page, with its drawing in millimetres.
struct PaperPage {
    film::Paper paper{PaperMm(kPageWidth), PaperMm(210)};
    drawing::Drawing drawing;
};

/// @return the lower edge of what it drew
double drawHead(CardPen& pen, const PaperHead& head, std::size_t page, std::size_t pages);
void drawSource(CardPen& pen, const std::string& source);

/// Notes under each other, each with its lead in bold, three rows at most. @return the lower edge
double drawNotes(CardPen& pen, const std::vector<CardNote>& notes, double top);
[[nodiscard]] double notesHeight(const std::vector<CardNote>& notes);

/// Pages as PDF, dated by when the plan was prepared, so that the same plan gives the same bytes. Needs no running
/// application. Errors: press/no-face, press/no-pages, press/pdf-refused.
/// @param faces  folder of the bundled faces
/// @param now    taken where the plan does not say when it was prepared
[[nodiscard]] Result<std::string> pagesPdf(const std::vector<PaperPage>& pages, const std::string& kind,
                                           const plan::Heading& heading, const std::filesystem::path& faces,
                                           Instant now);
/// A page as a picture of so many dots to the inch, PNG. Errors: press/no-face, press/no-pages.
[[nodiscard]] Result<std::string> pagePng(const PaperPage& page, int dotsPerInch, const std::filesystem::path& faces);

}  // namespace crosstick::press
