#include "ui/look/spoken.h"

#include <string>

#include <QCoreApplication>

namespace crosstick::look {

QString spoken(std::string_view english) {
    return english.empty() ? QString() : QCoreApplication::translate("Core", std::string(english).c_str());
}

}  // namespace crosstick::look
