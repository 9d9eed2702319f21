#include "ui/look/spoken.h"

#include "ui/press/said.h"

namespace crosstick::look {

QString spoken(std::string_view english) {
    return QString::fromStdString(press::spoken(english));
}

}  // namespace crosstick::look
