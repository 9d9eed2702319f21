#pragma once

#include <map>
#include <set>

#include "ui/table/scene.h"

namespace crosstick::table {

/// Inks one scene after the other, and only what changed: a film whose measures, routes and figures stayed keeps its
/// ink. Thread: one thread at a time (frames hold PROJ transformations).
class Inker {
  public:
    /// The same as inkFilms(scene). Errors: those of film::Frame.
    [[nodiscard]] Result<std::vector<FilmInk>> ink(const Scene& scene);

  private:
    std::optional<Scene> before_;
    std::shared_ptr<const geodesy::PlaneLink> link_;
    std::map<plan::FilmId, FilmInk> kept_;

    void forget(const Scene& scene);
    [[nodiscard]] Result<FilmInk> inkOf(const Scene& scene, const plan::FilmPtr& film);
};

}  // namespace crosstick::table
