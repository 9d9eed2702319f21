#include "ui/press/said.h"

#include <QCoreApplication>

#include "core/units/speech.h"

namespace crosstick::press {

std::string said(std::string_view english, const std::vector<std::string>& parts) {
    return english.empty()
               ? std::string()
               : filled(QCoreApplication::translate("Papers", std::string(english).c_str()).toStdString(), parts);
}

}  // namespace crosstick::press
