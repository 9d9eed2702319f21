#pragma once

#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include "core/units/time.h"

namespace crosstick {

/// A zone as a person names it, with the rules by which its clocks change. Never the machine's own zone.
class ZoneRules {
  public:
    /// One offset all year round.
    explicit ZoneRules(TimeZone fixed) : fixed_(fixed) {}

    /// A letter A to Z, an offset ("+02:00", "-0330", up to 14 hours) or a name of the IANA time zone database
    /// ("Europe/Oslo"), by the system's copy of it.
    /// @param local  what J stands for: the plan's zone; none where there is no plan
    /// Errors: units/no-such-zone for a letter without an offset, units/no-zone-named for any other text.
    [[nodiscard]] static Result<ZoneRules> parse(std::string_view text, std::optional<TimeZone> local);

    /// The offset of that moment; the letter is J where the offset is not one of whole hours.
    [[nodiscard]] TimeZone at(Instant when) const;
    /// The first moment of a calendar date. Where clocks skip midnight, the moment after they did.
    [[nodiscard]] Instant startOf(CalendarDate date) const;

  private:
    struct Named;
    explicit ZoneRules(std::shared_ptr<const Named> named) : named_(std::move(named)) {}

    TimeZone fixed_;
    std::shared_ptr<const Named> named_;  ///< null for a fixed offset
};

}  // namespace crosstick
