#include "core/plan/force_edits.h"

#include <gtest/gtest.h>

namespace crosstick::plan {
namespace {

const Uuid kSquad{{1}};
const Uuid kTeam{{2}};

Force twoElements() {
    Force force;
    force.elements = {{kSquad, "inf sqd", "1 Sqd", "P11", 9}, {kTeam, "inf tm", "AT", "P17", 3}};
    Column column;
    column.serials = {{kSquad, "", {}}, {kTeam, "", {}}};
    force.columns.push_back(column);
    Task own;
    own.element = kSquad;
    own.task = "support by fire";
    Task attached;
    attached.element = kTeam;
    attached.attachedTo = kSquad;
    attached.task = "destroy vehicles";
    force.tasks = {own, attached};
    Event event;
    event.element = kSquad;
    event.reporter = kSquad;
    force.events.push_back(event);
    return force;
}

TEST(ForceEdits, AnElementThatGoesIsNamedNowhereAnyMore) {
    const Force left = withoutElement(twoElements(), kSquad);
    ASSERT_EQ(left.elements.size(), 1U);
    EXPECT_EQ(left.columns.front().serials.size(), 1U);
    ASSERT_EQ(left.tasks.size(), 1U);
    EXPECT_EQ(left.tasks.front().task, "destroy vehicles");
    EXPECT_FALSE(left.tasks.front().attachedTo);
    EXPECT_FALSE(left.events.front().element);
    EXPECT_FALSE(left.events.front().reporter);
    EXPECT_EQ(withoutElement(twoElements(), Uuid{{9}}), twoElements());
}

TEST(ForceEdits, AnElementHasAtMostOneTaskInAPhase) {
    Task other = *twoElements().task(kSquad, 1);
    other.task = "assault";
    Force force = withTask(twoElements(), other);
    EXPECT_EQ(force.tasks.size(), 2U);
    EXPECT_EQ(force.task(kSquad, 1)->task, "assault");
    other.phase = 2;
    force = withTask(force, other);
    EXPECT_EQ(force.tasks.size(), 3U);
    Task nothing;
    nothing.element = kSquad;
    nothing.phase = 2;
    force = withTask(force, nothing);
    EXPECT_EQ(force.task(kSquad, 2), nullptr);
    EXPECT_EQ(withTask(force, nothing), force);
}

}  // namespace
}  // namespace crosstick::plan
