#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

#include "app/picture/make_picture.h"
#include "app/picture/overlay.h"
#include "app/picture/raster.h"
#include "app/picture/shapes.h"
#include "app/picture/software_picture.h"
#include "sample_pictures.h"

using namespace hither;

namespace {

constexpr QSize size(320, 240);

Picture ball(Look look, double opacity = 1) {
    Picture picture;
    PictureItem item;
    item.key = "ball";
    item.mesh = std::make_shared<const Mesh>(sphereMesh(Vec3(0, 0, 0.7), 0.2, 24));
    item.look = look;
    item.opacity = opacity;
    picture.items = {item};
    picture.bounds_W = Eigen::AlignedBox3d(Vec3(-0.2, -0.2, 0.5), Vec3(0.2, 0.2, 0.9));
    return picture;
}
Camera at(const Picture& picture) {
    Camera camera;
    camera.fit(picture.bounds_W, size.width(), size.height());
    return camera;
}
QColor middle(const QImage& image) { return image.pixelColor(image.width() / 2, image.height() / 2); }
double apart(const QColor& a, const QColor& b) { return std::abs(a.redF() - b.redF()) + std::abs(a.greenF() - b.greenF()) + std::abs(a.blueF() - b.blueF()); }

/// WCAG 2.1 contrast, written out from its definition.
double contrastOf(const QColor& a, const QColor& b) {
    const auto luminance = [](const QColor& c) {
        const auto part = [](double v) { return v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4); };
        return 0.2126 * part(c.redF()) + 0.7152 * part(c.greenF()) + 0.0722 * part(c.blueF());
    };
    const double x = luminance(a), y = luminance(b);
    return (std::max(x, y) + 0.05) / (std::min(x, y) + 0.05);
}

}  // namespace

TEST_CASE("Every look is drawn in its own colour, light and dark") {
    for (const PictureColours& colours : {PictureColours::light(), PictureColours::darkOnes()}) {
        std::set<QRgb> seen;
        for (int look = 0; look <= static_cast<int>(Look::ghost); ++look) {
            const Picture picture = ball(static_cast<Look>(look));
            const QImage image = softwarePicture(picture, at(picture), colours, size);
            CHECK(image.size() == size);
            CHECK(apart(middle(image), image.pixelColor(2, 120)) > 0.04);  // stands off the ground
            seen.insert(middle(image).rgb());
        }
        CHECK(seen.size() == static_cast<std::size_t>(Look::ghost) + 1);
    }
}

TEST_CASE("What is in front hides what is behind, and what is seen through does not") {
    const PictureColours colours = PictureColours::light();
    Picture picture = ball(Look::switchCap);
    const Camera camera = at(picture);
    const QColor alone = middle(softwarePicture(picture, camera, colours, size));
    const Vec3 toEye = (camera.eye_W() - camera.target_W).normalized();
    PictureItem plate = picture.items.front();
    plate.key = "plate";
    plate.mesh = std::make_shared<const Mesh>(sphereMesh(Vec3(0, 0, 0.7) - 0.5 * toEye, 0.2, 24));
    plate.look = Look::wood;
    picture.items.push_back(plate);
    CHECK(middle(softwarePicture(picture, camera, colours, size)) == alone);
    picture.items.back().mesh = std::make_shared<const Mesh>(sphereMesh(Vec3(0, 0, 0.7) + 0.3 * toEye, 0.1, 24));
    const QColor covered = middle(softwarePicture(picture, camera, colours, size));
    CHECK(apart(covered, alone) > 0.3);
    picture.items.back().opacity = 0.3;
    const QColor mixed = middle(softwarePicture(picture, camera, colours, size));
    CHECK(apart(mixed, alone) > 0.03);
    CHECK(apart(mixed, alone) < apart(covered, alone));
}

TEST_CASE("A surface is where the camera says, at any scale of the screen") {
    Picture picture = ball(Look::switchCap), nothing = picture;
    picture.items.front().castsShadow = false;
    nothing.items.clear();
    Camera camera = at(picture);
    camera.target_W = Vec3(0, 0, 0.7);
    for (const double scale : {1.0, 1.5, 2.0}) {
        const QImage empty = softwarePicture(nothing, camera, PictureColours::light(), size, scale);
        const QImage image = softwarePicture(picture, camera, PictureColours::light(), size, scale);
        CHECK(image.width() == qRound(320 * scale));
        CHECK(image.devicePixelRatio() == Approx(scale));
        // The ball's outline: tangents from the eye leave the middle by asin(r / d).
        const double d = (camera.eye_W() - Vec3(0, 0, 0.7)).norm(), reach = std::tan(std::asin(0.2 / d)) / std::tan(0.5 * camera.fieldOfView) * 0.5 * image.height();
        int first = image.width(), last = 0;
        for (int x = 0; x < image.width(); ++x)
            if (image.pixel(x, image.height() / 2) != empty.pixel(x, image.height() / 2)) { first = std::min(first, x); last = x; }
        CHECK(0.5 * (last - first + 1) == Approx(reach).margin(1.5));
    }
}

TEST_CASE("What is picked is outlined, also where it is hidden") {
    const PictureColours colours = PictureColours::light();
    Picture picture = ball(Look::metal);
    picture.items.front().castsShadow = false;
    const Camera camera = at(picture);
    const auto blue = [&](const QImage& image) {
        int count = 0;
        for (int y = 0; y < image.height(); ++y)
            for (int x = 0; x < image.width(); ++x) count += apart(image.pixelColor(x, y), colours.outline) < 0.12;
        return count;
    };
    CHECK(blue(softwarePicture(picture, camera, colours, size)) == 0);
    picture.items.front().outlined = true;
    CHECK(blue(softwarePicture(picture, camera, colours, size)) > 100);
    const QImage open = softwarePicture(picture, camera, colours, size);
    PictureItem front = picture.items.front();
    front.outlined = false;
    front.mesh = std::make_shared<const Mesh>(sphereMesh(Vec3(0, 0, 0.7) + 0.3 * (camera.eye_W() - camera.target_W).normalized(), 0.3, 32));
    picture.items.push_back(front);
    const QImage hidden = softwarePicture(picture, camera, colours, size);
    picture.items.front().outlined = false;
    CHECK(hidden != softwarePicture(picture, camera, colours, size));
    CHECK(open != hidden);
}

TEST_CASE("Lines that run far out of the view are still drawn within it") {
    Raster raster;
    raster.clear(100, 80, false);
    const auto drawn = [&] { return std::count_if(raster.colour.begin(), raster.colour.end(), [](std::uint32_t c) { return c != 0; }); };
    raster.line({-50, 90, 1, 0}, {-10, 20, 1, 0}, 0xff112233U);
    CHECK(drawn() == 0);
    raster.line({-1e6F, 40.5F, 1, 0}, {1e6F, 40.5F, 1, 0}, 0xff112233U);
    CHECK(drawn() >= 2 * 97);  // to within a sample or two at the ends, by rounding
    CHECK(raster.colour[40 * 100 + 50] == 0xff112233U);
    // Nearer things hide it.
    raster.clear(100, 80, false);
    raster.w.assign(raster.w.size(), 2);
    raster.line({0, 40.5F, 1, 0}, {100, 40.5F, 1, 0}, 0xff112233U);
    CHECK(drawn() == 0);
}

TEST_CASE("Labels stay in the view and off each other") {
    Picture picture = ball(Look::metal);
    for (int i = 0; i < 8; ++i) picture.labels.push_back({"l" + std::to_string(i), "A label with some words, " + std::to_string(i), Vec3(0.02 * i, 0.01 * i, 0.7), PictureLabel::Rank::plain});
    picture.labels[5].rank = PictureLabel::Rank::finding;
    const QSizeF view(640, 480);
    for (const double points : {9.0, 18.0}) {
        QFont font;
        font.setPointSizeF(points);
        const std::vector<PlacedLabel> placed = placeLabels(picture, at(picture), font, view);
        REQUIRE(placed.size() >= (points < 10 ? 8U : 4U));
        CHECK(placed.front().label->key == "l5");  // the most important one is placed first
        for (std::size_t i = 0; i < placed.size(); ++i) {
            CHECK(QRectF(QPointF(), view).contains(placed[i].box));
            CHECK_FALSE(placed[i].box.contains(placed[i].point));
            for (std::size_t j = 0; j < i; ++j) CHECK_FALSE(placed[i].box.intersects(placed[j].box));
        }
    }
    picture.labels.front().at_W = at(picture).eye_W() + Vec3(0, 0, 1);  // not in view
    CHECK(placeLabels(picture, at(picture), QFont(), view).size() == 7);
}

TEST_CASE("Every sample is drawn, light and dark, from near and from below too") {
    for (const SamplePlan& sample : samplePlans()) {
        INFO(sample.name);
        const Picture picture = PictureMaker().make(&sample.setup.situation, &sample.setup, {});
        Camera camera = at(picture);
        const QImage light = softwarePicture(picture, camera, PictureColours::light(), size), dark = softwarePicture(picture, camera, PictureColours::darkOnes(), size);
        CHECK(light != dark);
        std::set<QRgb> tones;
        for (int y = 0; y < size.height(); ++y)
            for (int x = 0; x < size.width(); ++x) tones.insert(light.pixel(x, y));
        CHECK(tones.size() > 500);
        camera.distance = 0.06;  // within things
        CHECK_FALSE(softwarePicture(picture, camera, PictureColours::light(), size).isNull());
        camera.fit(picture.bounds_W, size.width(), size.height());
        camera.elevation = -1.2;
        CHECK_FALSE(softwarePicture(picture, camera, PictureColours::light(), size).isNull());
    }
}

TEST_CASE("Words on labels and marks on the ground can be read") {
    for (const PictureColours& c : {PictureColours::light(), PictureColours::darkOnes()}) {
        CHECK(contrastOf(c.labelText, c.labelBack) >= 4.5);
        CHECK(contrastOf(c.labelBorder, c.labelBack) >= 3);
        for (const QColor& ground : {c.skyTop, c.skyBottom}) {
            CHECK(contrastOf(c.outline, ground) >= 3);
            CHECK(contrastOf(c.labelBorder, ground) >= 3);
            for (const Look look : {Look::gripPart, Look::armPart, Look::neckPart, Look::switchCap, Look::siteDisc, Look::movementArrow, Look::misses, Look::close, Look::jointHandle, Look::outletHandle, Look::keepOut})
{
                INFO("look " << static_cast<int>(look) << (c.dark ? " dark" : " light"));
                CHECK(contrastOf(c.of(look), ground) >= 3);
            }
        }
    }
}
