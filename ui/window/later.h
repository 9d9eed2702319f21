#pragma once

#include <functional>
#include <utility>

namespace crosstick::window {

/// A part of the window that is made when it is first asked for: a start pays only for what it shows. Who made it owns
/// it, as every part has a parent.
template <typename Part>
class Later {
  public:
    /// @param make  makes the part whole: in its place, connected, in the light of the moment
    void set(std::function<Part*()> make) { make_ = std::move(make); }
    /// The part if it is there already, else null.
    [[nodiscard]] Part* made() const { return part_; }
    [[nodiscard]] Part& operator*() {
        if (part_ == nullptr) {
            part_ = make_();
        }
        return *part_;
    }
    [[nodiscard]] Part* operator->() { return &**this; }
    template <typename Deed>
    void ifMade(Deed&& deed) const {
        if (part_ != nullptr) {
            std::forward<Deed>(deed)(*part_);
        }
    }

  private:
    std::function<Part*()> make_;
    Part* part_ = nullptr;
};

}  // namespace crosstick::window
