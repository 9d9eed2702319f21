#pragma once

#include <map>
#include <memory>
#include <vector>

#include "core/film/ground_lines.h"
#include "core/film/page.h"
#include "core/film/placed_ticks.h"
#include "core/film/placement.h"

namespace crosstick::film {

/// Lays out the films of one plan. What they have in common is worked out once: the grids they lie on, what is drawn,
/// the ticks, and how the furniture finds its place; films of one window and scale therefore lie alike on their papers.
/// Thread: one thread at a time (it holds PROJ transformations).
class SetLayout {
  public:
    explicit SetLayout(const plan::Plan& plan);
    ~SetLayout();
    SetLayout(SetLayout&&) noexcept;
    SetLayout& operator=(SetLayout&&) noexcept;
    SetLayout(const SetLayout&) = delete;
    SetLayout& operator=(const SetLayout&) = delete;

    /// As Frame::of, by a way to the film's grid that is shared with all other films on it; fitted to the stretch of
    /// its sheet's paper, where that is known and the film has the sheet's scale.
    [[nodiscard]] Result<Frame> frame(const plan::Film& film, std::optional<Scale> scale);
    /// @param order  of this plan, its frame got from here or from Frame::of
    /// Errors: as those of film::layOut.
    [[nodiscard]] Result<Page> layOut(const PageOrder& order);

  private:
    struct Grid;
    struct Lie;
    plan::Plan plan_;
    std::map<std::string, std::unique_ptr<Grid>> grids_;
    std::vector<std::unique_ptr<Lie>> lies_;

    Result<Grid*> grid(const std::string& crs);
    Result<Lie*> lie(const PageOrder& order);
};

}  // namespace crosstick::film
