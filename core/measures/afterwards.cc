#include "core/measures/afterwards.h"

namespace crosstick::measures {

Afterwards afterwards(const Entry& entry) {
    if (entry.group == Group::Tasks || entry.group == Group::Words || leadsOn(entry)) {
        return Afterwards::Spent;
    }
    switch (entry.sign) {
        case Sign::Unit:
            return Afterwards::Moves;
        case Sign::OrderOfMarch:
        case Sign::Halt:
        case Sign::Lane:
            return Afterwards::Spent;
        case Sign::NamedLine:
        case Sign::DangerLine:
            return Afterwards::BehindOnceCrossed;
        default:
            return Afterwards::LivesOn;
    }
}

bool leadsOn(const Entry& entry) {
    switch (entry.sign) {
        case Sign::Attack:
        case Sign::MainAttack:
        case Sign::Movement:
        case Sign::Axis:
        case Sign::MainAxis:
            return true;
        default:
            return false;
    }
}

}  // namespace crosstick::measures
