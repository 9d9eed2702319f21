#pragma once

#include <functional>
#include <optional>
#include <vector>

#include <gtest/gtest.h>

#include "ui/tools/follow_tool.h"

namespace crosstick::tools {

/// Metres from a corner of the ground.
inline geodesy::PlanePoint at(double east, double north) {
    return {Metres(650000 + east), Metres(5100000 + north)};
}

/// A table with one film, and a sheet that is asked for its printed lines and answers when it is told to. The hand
/// reaches 10 m.
class AskedTable : public ::testing::Test {
  protected:
    struct Asked {
        geodesy::PlanePoint from, to;
        std::optional<terrain::Vein> like;
        std::function<void(Found)> then;
    };
    std::vector<Asked> asked_;
    plan::Plan plan_;
    plan::FilmId film_{{9}};
    std::uint8_t ids_ = 0;

    AskedTable() {
        plan::Film film;
        film.id = film_;
        plan_ = std::move(plan::PlanBuilder({}).put(film)).build();
    }
    FollowTool tool(std::optional<Rail> rail = std::nullopt) {
        return FollowTool(
            *measures::find("free-line"),
            [this](auto from, auto to, const auto& like, auto then) {
                asked_.push_back({from, to, like, std::move(then)});
            },
            std::move(rail));
    }
    Reply take(FollowTool& tool, const Event& event) {
        const Ground ground{plan_, film_, plan_.films(), std::nullopt, Metres(10), [this] {
                                Uuid id;
                                id.bytes[0] = ++ids_;
                                return id;
                            }};
        return tool.take(event, ground);
    }
};

}  // namespace crosstick::tools
