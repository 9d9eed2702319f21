#include "core/plan/force.h"

#include <algorithm>
#include <cctype>

namespace crosstick::plan {
namespace {

bool isSame(std::string_view a, std::string_view b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                      [](unsigned char x, unsigned char y) { return std::tolower(x) == std::tolower(y); });
}

}  // namespace

const Element* Force::element(const Uuid& id) const {
    const auto found = std::find_if(elements.begin(), elements.end(), [&](const Element& one) { return one.id == id; });
    return found == elements.end() ? nullptr : &*found;
}

const Task* Force::task(const Uuid& element, int phase) const {
    const auto found = std::find_if(tasks.begin(), tasks.end(),
                                    [&](const Task& one) { return one.element == element && one.phase == phase; });
    return found == tasks.end() ? nullptr : &*found;
}

const Column* Force::columnNamed(std::string_view name) const {
    const auto found = std::find_if(columns.begin(), columns.end(),
                                    [&](const Column& one) { return name.empty() || isSame(one.name, name); });
    return found == columns.end() ? nullptr : &*found;
}

}  // namespace crosstick::plan
