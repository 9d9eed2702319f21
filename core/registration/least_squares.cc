#include "core/registration/least_squares.h"

#include <cmath>
#include <limits>

#include <Eigen/Dense>

#include "core/registration/faults.h"

namespace crosstick::registration {
namespace {

using Numbers = std::array<double, 12>;
using Matrix = Eigen::MatrixXd;
using Vector = Eigen::VectorXd;

/// Smallest to largest singular value under which a system is refused: marks within 0.3 per cent of a line, say, whose
/// errors would decide all. Our own.
constexpr double kFlat = 3e-3;

/// A mark in normed numbers.
struct Point {
    double x = 0, y = 0, east = 0, north = 0;
};

Norm normOf(std::span<const Mark> marks) {
    Norm norm;
    const double n = static_cast<double>(marks.size());
    for (const Mark& mark : marks) {
        norm.middle.x += mark.at.x / n;
        norm.middle.y += mark.at.y / n;
        norm.place.easting += mark.place.easting / n;
        norm.place.northing += mark.place.northing / n;
    }
    double pixels = 0;
    double metres = 0;
    for (const Mark& mark : marks) {
        pixels += std::pow(mark.at.x - norm.middle.x, 2) + std::pow(mark.at.y - norm.middle.y, 2);
        metres += std::pow((mark.place.easting - norm.place.easting).value(), 2) +
                  std::pow((mark.place.northing - norm.place.northing).value(), 2);
    }
    norm.pixels = std::sqrt(pixels / n);
    norm.metres = std::sqrt(metres / n);
    return norm;
}

Point normed(const Norm& norm, const Mark& mark) {
    return {(mark.at.x - norm.middle.x) / norm.pixels, (mark.at.y - norm.middle.y) / norm.pixels,
            (mark.place.easting - norm.place.easting).value() / norm.metres,
            (mark.place.northing - norm.place.northing).value() / norm.metres};
}

/// How easting and northing at a point change with the model's numbers: two rows.
void slopes(Kind kind, const Numbers& numbers, const Point& p, Eigen::Ref<Matrix> rows) {
    rows.setZero();
    switch (kind) {
        case Kind::Similarity:
            rows << p.x, p.y, 1, 0, -p.y, p.x, 0, 1;
            return;
        case Kind::Affine:
            rows.row(0).head(3) << 1, p.x, p.y;
            rows.row(1).tail(3) = rows.row(0).head(3);
            return;
        case Kind::Projective: {
            const Normed at = normedAt(kind, numbers, p.x, p.y);
            rows.row(0).head(3) << 1 / at.depth, p.x / at.depth, p.y / at.depth;
            rows.row(1).segment(3, 3) = rows.row(0).head(3);
            rows.row(0).tail(2) = -at.east * rows.row(0).segment(1, 2);
            rows.row(1).tail(2) = -at.north * rows.row(0).segment(1, 2);
            return;
        }
        case Kind::Quadratic:
            rows.row(0).head(6) << 1, p.x, p.y, p.x * p.x, p.x * p.y, p.y * p.y;
            rows.row(1).tail(6) = rows.row(0).head(6);
            return;
    }
}

Matrix design(Kind kind, const Numbers& numbers, std::span<const Point> points) {
    Matrix rows(2 * static_cast<Eigen::Index>(points.size()), parametersOf(kind));
    for (std::size_t n = 0; n < points.size(); ++n) {
        slopes(kind, numbers, points[n], rows.middleRows(2 * static_cast<Eigen::Index>(n), 2));
    }
    return rows;
}

/// Solves by singular values; nothing where the smallest is next to none of the largest.
std::optional<Vector> leastSquares(const Matrix& rows, const Vector& wanted) {
    const Eigen::JacobiSVD<Matrix> svd(rows, Eigen::ComputeThinU | Eigen::ComputeThinV);
    const Vector& values = svd.singularValues();
    if (!(values[values.size() - 1] > kFlat * values[0])) {
        return std::nullopt;
    }
    return Vector(svd.solve(wanted));
}

Numbers numbersOf(const Vector& solution) {
    Numbers numbers{};
    for (Eigen::Index n = 0; n < solution.size(); ++n) {
        numbers[static_cast<std::size_t>(n)] = solution[n];
    }
    return numbers;
}

Vector groundOf(std::span<const Point> points) {
    Vector wanted(2 * static_cast<Eigen::Index>(points.size()));
    Eigen::Index row = 0;
    for (const Point& p : points) {
        wanted[row++] = p.east;
        wanted[row++] = p.north;
    }
    return wanted;
}

/// The projective model with its depth multiplied out is linear; its answer is a start.
std::optional<Vector> linearProjective(std::span<const Point> points, const Vector& wanted) {
    Matrix rows = design(Kind::Projective, Numbers{}, points);
    for (std::size_t n = 0; n < points.size(); ++n) {
        const auto row = 2 * static_cast<Eigen::Index>(n);
        for (const Eigen::Index k : {row, row + 1}) {
            rows(k, 6) = -wanted[k] * points[n].x;
            rows(k, 7) = -wanted[k] * points[n].y;
        }
    }
    return leastSquares(rows, wanted);
}

std::optional<Numbers> projective(std::span<const Point> points, const Vector& wanted) {
    auto solution = linearProjective(points, wanted);
    constexpr int kSteps = 12;
    for (int n = 0; solution && n < kSteps; ++n) {
        const Numbers numbers = numbersOf(*solution);
        Vector missing(wanted.size());
        Eigen::Index row = 0;
        for (const Point& p : points) {
            const Normed at = normedAt(Kind::Projective, numbers, p.x, p.y);
            missing[row++] = p.east - at.east;
            missing[row++] = p.north - at.north;
        }
        const auto step = leastSquares(design(Kind::Projective, numbers, points), missing);
        if (!step) {
            return std::nullopt;
        }
        *solution += *step;
        if (step->norm() < 1e-13) {
            break;
        }
    }
    return solution ? std::optional(numbersOf(*solution)) : std::nullopt;
}

std::optional<Numbers> numbersFor(Kind kind, std::span<const Point> points) {
    const Vector wanted = groundOf(points);
    if (kind == Kind::Projective) {
        return projective(points, wanted);
    }
    const auto solution = leastSquares(design(kind, Numbers{}, points), wanted);
    return solution ? std::optional(numbersOf(*solution)) : std::nullopt;
}

/// No mark stands on a fold or beyond a horizon, and none is seen in a mirror.
bool isSound(const Model& model, std::span<const Mark> marks) {
    return std::all_of(marks.begin(), marks.end(), [&](const Mark& mark) {
        const PixelStep step = model.stepAt(mark.at);
        return model.place(mark.at) &&
               step.eastPerColumn * step.northPerRow - step.eastPerRow * step.northPerColumn < 0;
    });
}

Result<void> atLeast(Kind kind, std::span<const Mark> marks) {
    const int fewest = fewestMarks(kind);
    if (static_cast<int>(marks.size()) < fewest) {
        return fail(kTooFewMarks,
                    {{"marks", static_cast<std::int64_t>(marks.size())}, {"least", static_cast<std::int64_t>(fewest)}});
    }
    return {};
}

/// What the system says of its own rows: the inverse of the normal matrix, from the singular values.
Matrix cofactors(const Matrix& rows) {
    const Eigen::HouseholderQR<Matrix> qr(rows);
    const Matrix upper = qr.matrixQR().topRows(rows.cols()).triangularView<Eigen::Upper>();
    const Matrix inverse = upper.triangularView<Eigen::Upper>().solve(Matrix::Identity(rows.cols(), rows.cols()));
    return inverse * inverse.transpose();
}

/// Differences of normed ground as pixels there.
PixelPoint inPixels(const Model& model, PixelPoint at, const Eigen::Vector2d& ground) {
    const double k = model.norm().metres;
    return model.stepAt(at).pixels(Metres(ground[0] * k), Metres(ground[1] * k));
}

Eigen::Vector2d difference(const Model& model, const Point& p) {
    const Normed at = normedAt(model.kind(), model.numbers(), p.x, p.y);
    return {at.east - p.east, at.north - p.north};
}

Misfit misfitAt(const Model& model, const Mark& mark, const Point& p, const Matrix& cofactor) {
    Matrix rows(2, parametersOf(model.kind()));
    slopes(model.kind(), model.numbers(), p, rows);
    const Eigen::Matrix2d hat = rows * cofactor * rows.transpose();
    const Eigen::Vector2d left = difference(model, p);
    const Eigen::Matrix2d rest = Eigen::Matrix2d::Identity() - hat;
    Misfit misfit{inPixels(model, mark.at, left), {}, 0, hat.trace() / 2};
    constexpr double kNothingLeft = 1e-9;
    if (rest.determinant() < kNothingLeft) {
        const double unknown = std::numeric_limits<double>::quiet_NaN();
        misfit.ifLeftOut = {unknown, unknown};
        return misfit;
    }
    const Eigen::Vector2d without = rest.inverse() * left;
    misfit.ifLeftOut = inPixels(model, mark.at, without);
    // On the ground, then by the mark's own metres a pixel: the two differ by a factor only.
    const double perPixel = model.stepAt(mark.at).metres() / model.norm().metres;
    misfit.gain = left.dot(without) / (perPixel * perPixel);
    return misfit;
}

}  // namespace

Result<Solved> solve(Kind kind, std::span<const Mark> marks) {
    if (auto enough = atLeast(kind, marks); !enough) {
        return tl::unexpected(enough.error());
    }
    const Norm norm = normOf(marks);
    std::vector<Point> points;
    for (const Mark& mark : marks) {
        points.push_back(normed(norm, mark));
    }
    const auto numbers = numbersFor(kind, points);
    if (!numbers) {
        return fail(kOneLine, {{"least", static_cast<std::int64_t>(fewestMarks(kind))}});
    }
    Solved solved{Model(kind, norm, *numbers), {}, 0};
    if (!isSound(solved.model, marks)) {
        return fail(kContrary);
    }
    const Matrix cofactor = cofactors(design(kind, *numbers, points));
    for (std::size_t n = 0; n < marks.size(); ++n) {
        solved.misfits.push_back(misfitAt(solved.model, marks[n], points[n], cofactor));
        const PixelPoint& p = solved.misfits.back().pixels;
        solved.squares += p.x * p.x + p.y * p.y;
    }
    return solved;
}

Misfit misfitOf(const Model& model, std::span<const Mark> fitted, const Mark& mark) {
    std::vector<Point> points;
    for (const Mark& one : fitted) {
        points.push_back(normed(model.norm(), one));
    }
    const Point p = normed(model.norm(), mark);
    Matrix rows(2, parametersOf(model.kind()));
    slopes(model.kind(), model.numbers(), p, rows);
    const Matrix cofactor = cofactors(design(model.kind(), model.numbers(), points));
    const PixelPoint off = inPixels(model, mark.at, difference(model, p));
    return {off, off, 0, (rows * cofactor * rows.transpose()).trace() / 2};
}

}  // namespace crosstick::registration
