#include "tests/press/trace.h"

#include <array>
#include <cmath>
#include <cstdio>
#include <sstream>

namespace crosstick::testing {
namespace {

constexpr double kMmPerPoint = 25.4 / 72;

std::string attribute(const std::string& line, const std::string& name) {
    const std::string key = ' ' + name + "=\"";
    const auto at = line.find(key);
    if (at == std::string::npos) {
        return {};
    }
    const auto from = at + key.size();
    return line.substr(from, line.find('"', from) - from);
}

double real(const std::string& text) {
    return std::stod(text);  // as MuPDF writes them: ".25"
}

struct Matrix {
    double a = 1, b = 0, c = 0, d = 1, e = 0, f = 0;
    [[nodiscard]] drawing::Point at(double x, double y) const {
        return {(a * x + c * y + e) * kMmPerPoint, (b * x + d * y + f) * kMmPerPoint};
    }
};

Matrix matrixOf(const std::string& line) {
    std::istringstream in(attribute(line, "transform"));
    Matrix m;
    in >> m.a >> m.b >> m.c >> m.d >> m.e >> m.f;
    return m;
}

bool begins(const std::string& line, const char* tag) {
    return line.find(std::string("<") + tag + ' ') != std::string::npos;
}

}  // namespace

std::string outputOf(const std::string& command) {
    std::string out;
    FILE* pipe = popen(command.c_str(), "r");
    if (pipe == nullptr) {
        return {};
    }
    std::array<char, 4096> part{};
    for (std::size_t got = fread(part.data(), 1, part.size(), pipe); got > 0;
         got = fread(part.data(), 1, part.size(), pipe)) {
        out.append(part.data(), got);
    }
    return pclose(pipe) == 0 ? out : std::string{};
}

TracedPage trace(const std::filesystem::path& pdf, int page) {
    std::istringstream in(outputOf("mutool trace '" + pdf.string() + "' " + std::to_string(page) + " 2>/dev/null"));
    TracedPage traced;
    Matrix matrix;
    bool stroking = false;
    for (std::string line; std::getline(in, line);) {
        if (begins(line, "page")) {
            std::istringstream box(attribute(line, "mediabox"));
            double left = 0, top = 0, right = 0, bottom = 0;
            box >> left >> top >> right >> bottom;
            traced.width = (right - left) * kMmPerPoint;
            traced.height = (bottom - top) * kMmPerPoint;
        } else if (begins(line, "stroke_path")) {
            matrix = matrixOf(line);
            stroking = true;
            const double pen =
                real(attribute(line, "linewidth")) * std::sqrt(std::abs(matrix.a * matrix.d - matrix.b * matrix.c));
            traced.lines.push_back({{}, pen * kMmPerPoint});
        } else if (begins(line, "fill_path") || begins(line, "clip_path")) {
            stroking = false;
        } else if (stroking && (begins(line, "moveto") || begins(line, "lineto"))) {
            if (begins(line, "moveto") && !traced.lines.back().points.empty()) {
                traced.lines.push_back({{}, traced.lines.back().pen});
            }
            traced.lines.back().points.push_back(matrix.at(real(attribute(line, "x")), real(attribute(line, "y"))));
        } else if (begins(line, "fill_text")) {
            matrix = matrixOf(line);
            stroking = false;
        } else if (begins(line, "span")) {
            traced.texts.push_back({{}, attribute(line, "font"), {}, {}});
        } else if (begins(line, "g") && !traced.texts.empty()) {
            TracedText& text = traced.texts.back();
            const drawing::Point at = matrix.at(real(attribute(line, "x")), real(attribute(line, "y")));
            if (text.text.empty()) {
                text.start = at;
            }
            text.text += attribute(line, "unicode");
            text.places.push_back(std::hypot(at.x - text.start.x, at.y - text.start.y));
        } else if (begins(line, "fill_image") || begins(line, "fill_image_mask")) {
            ++traced.images;
        }
    }
    return traced;
}

bool hasStroke(const TracedPage& page, drawing::Point from, drawing::Point to, double tolerance) {
    const auto near = [tolerance](drawing::Point a, drawing::Point b) {
        return std::abs(a.x - b.x) <= tolerance && std::abs(a.y - b.y) <= tolerance;
    };
    for (const TracedLine& line : page.lines) {
        for (std::size_t n = 0; n + 1 < line.points.size(); ++n) {
            const auto& a = line.points[n];
            const auto& b = line.points[n + 1];
            if ((near(a, from) && near(b, to)) || (near(a, to) && near(b, from))) {
                return true;
            }
        }
    }
    return false;
}

}  // namespace crosstick::testing
