#pragma once

#include <string>
#include <vector>

#include "symbols/specimen/specimen.h"

namespace crosstick::symbols {

/// Fills pages from the upper left: headings over the whole width, rooms side by side with a caption under each; a row
/// that does not fit begins a new page.
class Flow {
  public:
    explicit Flow(std::string title);

    /// Begins a row of its own; it never stands alone at the foot of a page.
    void heading(const std::string& text);
    void endRow();
    /// The next room of a size, its captions written; `page` then takes what is drawn in it.
    [[nodiscard]] drawing::Box room(drawing::Vector size, const std::vector<std::string>& captions);
    void draw(drawing::Drawing&& drawing) { page().append(std::move(drawing)); }
    void cross(drawing::Point p);  ///< the true spot, in red
    [[nodiscard]] std::vector<SpecimenPage> pages() && { return std::move(pages_); }

  private:
    std::string title_;
    std::vector<SpecimenPage> pages_;
    drawing::Point at_;
    double rowHigh_ = 0;

    drawing::Drawing& page() { return pages_.back().drawing; }
    void beginPage();
    void need(double high);
    void write(const std::string& text, drawing::Point left, double capital, drawing::Weight weight);
};

}  // namespace crosstick::symbols
