#include "ui/press/own_family.h"

#include <array>

#include <QtEndian>

namespace crosstick::press {
namespace {

constexpr qsizetype kHeader = 12;  ///< of the file: version, number of tables, search ranges
constexpr qsizetype kEntry = 16;   ///< of a table: tag, checksum, offset, length

void addNumber(QByteArray& bytes, quint16 value) {
    bytes.append(static_cast<char>(value >> 8));
    bytes.append(static_cast<char>(value & 0xff));
}

/// A name table, format 0: every name once, for Windows in English (UTF-16).
QByteArray nameTable(const std::string& family, const std::string& title) {
    struct Name {
        quint16 id;
        std::string text;
    };
    const std::array names{Name{1, family}, Name{2, "Regular"}, Name{4, title}, Name{6, title}};
    QByteArray table;
    QByteArray letters;
    addNumber(table, 0);
    addNumber(table, static_cast<quint16>(names.size()));
    addNumber(table, static_cast<quint16>(6 + 12 * names.size()));
    for (const Name& name : names) {
        for (const quint16 number : std::array<quint16, 4>{3, 1, 0x409, name.id}) {
            addNumber(table, number);
        }
        addNumber(table, static_cast<quint16>(2 * name.text.size()));
        addNumber(table, static_cast<quint16>(letters.size()));
        for (const char letter : name.text) {
            addNumber(letters, static_cast<unsigned char>(letter));
        }
    }
    return table + letters;
}

}  // namespace

QByteArray underOwnFamily(QByteArray font, const std::string& family, const std::string& title) {
    if (font.size() < kHeader) {
        return {};
    }
    const qsizetype tables = qFromBigEndian<quint16>(font.constData() + 4);
    if (font.size() < kHeader + tables * kEntry) {
        return {};
    }
    font.append((4 - font.size() % 4) % 4, '\0');
    const QByteArray names = nameTable(family, title);
    for (qsizetype table = 0; table < tables; ++table) {
        char* entry = font.data() + kHeader + table * kEntry;
        if (QByteArray(entry, 4) == "name") {
            qToBigEndian<quint32>(static_cast<quint32>(font.size()), entry + 8);
            qToBigEndian<quint32>(static_cast<quint32>(names.size()), entry + 12);
            font.append(names);
            return font;
        }
    }
    return {};
}

}  // namespace crosstick::press
