#include "ui/table/plain_letters.h"

#include <QFont>
#include <QGuiApplication>

namespace crosstick::table {

drawing::Weight plainLetters() {
    return QGuiApplication::font().family().endsWith(QStringLiteral("-Bold")) ? drawing::Weight::Bold
                                                                              : drawing::Weight::Regular;
}

}  // namespace crosstick::table
