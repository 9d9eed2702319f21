#include "ui/press/said.h"

#include <QCoreApplication>

#include "core/units/speech.h"

namespace crosstick::press {
namespace {

std::string translated(const char* where, std::string_view english, const std::vector<std::string>& parts) {
    return english.empty()
               ? std::string()
               : filled(QCoreApplication::translate(where, std::string(english).c_str()).toStdString(), parts);
}

}  // namespace

std::string said(std::string_view english, const std::vector<std::string>& parts) {
    return translated("Papers", english, parts);
}

std::string spoken(std::string_view english, const std::vector<std::string>& parts) {
    return translated("Core", english, parts);
}

}  // namespace crosstick::press
