#pragma once

#include <map>
#include <vector>

#include "core/plan/traces.h"

namespace crosstick::files {

/// A copy whose source is another now than when it was traced.
struct StaleTrace {
    plan::ItemId copy;
    plan::MeasurePtr source;  ///< as it is now; null where the film shows it no more
    plan::Points now;         ///< where the copy would lie by its source; empty where that is gone
    Metres moved;             ///< how far that lies from where the copy lies, at most; 0 where only words changed
};

/// Looks which copies of a plan are stale. What did not change since it looked last is not hashed again, so that it may
/// look at every step of a drag.
class TraceWatch {
  public:
    /// In order of the copies' identities. A source that never was in this plan cannot be looked at: its copy is not
    /// told of.
    [[nodiscard]] const std::vector<StaleTrace>& look(const plan::Plan& plan);

  private:
    /// A source as it was looked at, and its hash.
    struct Known {
        plan::MeasurePtr source;
        std::string version;
    };
    std::map<plan::ItemId, Known> known_;
    std::vector<StaleTrace> stale_;

    [[nodiscard]] const std::string& versionOf(const plan::MeasurePtr& source);
};

}  // namespace crosstick::files
