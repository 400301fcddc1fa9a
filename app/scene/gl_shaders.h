#pragma once

namespace hither {

/// The shaders of the scene (GLSL 1.50). Colours of surfaces come in linear light (squares of
/// what a screen is sent); what is written is what the screen is sent.
namespace shaders {

/// Surfaces: soft light from above, a key light that agrees with the floor's shadow, a fill light from the
/// other side and a weak one from the eye.
constexpr const char* surfaceVertex = R"(#version 150 core
in vec3 vertexPosition;
in vec3 vertexNormal;
out vec3 normal;
out vec3 place;
uniform mat4 modelMatrix;
uniform mat3 modelNormalMatrix;
uniform mat4 mvp;
uniform float nearer;
void main() {
    normal = modelNormalMatrix * vertexNormal;
    place = vec3(modelMatrix * vec4(vertexPosition, 1.0));
    gl_Position = mvp * vec4(vertexPosition, 1.0);
    gl_Position.z = mix(gl_Position.z, -gl_Position.w + 0.05 * (gl_Position.z + gl_Position.w), nearer);
})";

constexpr const char* surfaceFragment = R"(#version 150 core
in vec3 normal;
in vec3 place;
out vec4 colour;
uniform vec3 eyePosition;
uniform vec3 base;
uniform vec3 glow;
uniform float alpha;
uniform float shine;
uniform float sharpness;
void main() {
    vec3 N = normalize(normal);
    vec3 V = normalize(eyePosition - place);
    const vec3 key = vec3(0.42, 0.34, 0.84);
    const vec3 fill = vec3(-0.45, -0.70, 0.55);
    vec3 light = mix(vec3(0.24, 0.23, 0.22), vec3(0.60, 0.62, 0.66), 0.5 + 0.5 * N.z);
    light += vec3(0.58, 0.56, 0.52) * max(dot(N, key), 0.0);
    light += vec3(0.13, 0.14, 0.16) * max(dot(N, fill), 0.0);
    float head = max(dot(N, V), 0.0);
    light += vec3(0.12) * head;
    float spot = max(dot(N, normalize(key + V)), 0.0);
    spot *= spot;
    spot *= spot;
    spot *= spot;
    spot = mix(spot, spot * spot * spot * spot, sharpness);
    float rim = (1.0 - head) * (1.0 - head);
    rim *= rim;
    vec3 c = base * light + vec3(shine * spot) + glow + vec3(0.05) * rim;
    colour = vec4(sqrt(clamp(c, 0.0, 1.0)), clamp(alpha + 0.25 * rim * (1.0 - alpha), 0.0, 1.0));
})";

/// Feature edges: one colour.
constexpr const char* edgeVertex = R"(#version 150 core
in vec3 vertexPosition;
uniform mat4 mvp;
void main() { gl_Position = mvp * vec4(vertexPosition, 1.0); })";

constexpr const char* flatFragment = R"(#version 150 core
out vec4 colour;
uniform vec4 flatColour;
void main() { colour = flatColour; })";

/// The outline of what is picked: the surface's back faces, moved outward by some pixels.
constexpr const char* outlineVertex = R"(#version 150 core
in vec3 vertexPosition;
in vec3 vertexNormal;
uniform mat4 mvp;
uniform vec2 viewSize;
uniform float width;
void main() {
    vec4 p = mvp * vec4(vertexPosition, 1.0);
    vec4 q = mvp * vec4(vertexPosition + 0.001 * vertexNormal, 1.0);
    vec2 d = (q.xy / q.w - p.xy / p.w) * viewSize;
    float l = length(d);
    if (l > 1e-6) p.xy += d / l * width * 2.0 / viewSize * p.w;
    gl_Position = p;
})";

/// Lines as strips of some pixels' width.
constexpr const char* lineVertex = R"(#version 150 core
in vec3 vertexPosition;
in vec3 otherEnd;
in vec4 tint;
in float side;
out vec4 lineTint;
uniform mat4 viewMatrix;
uniform mat4 projectionMatrix;
uniform vec2 viewSize;
uniform float width;
void main() {
    lineTint = tint;
    vec4 a = viewMatrix * vec4(vertexPosition, 1.0);
    vec4 b = viewMatrix * vec4(otherEnd, 1.0);
    const float nearest = -0.02;
    if (a.z > nearest && b.z < nearest) a = mix(b, a, (nearest - b.z) / (a.z - b.z));
    if (b.z > nearest && a.z < nearest) b = mix(a, b, (nearest - a.z) / (b.z - a.z));
    a = projectionMatrix * a;
    b = projectionMatrix * b;
    vec2 d = (b.xy / b.w - a.xy / a.w) * viewSize;
    float l = length(d);
    if (l > 1e-6) a.xy += vec2(-d.y, d.x) / l * side * width / viewSize * a.w;
    gl_Position = a;
})";

constexpr const char* lineFragment = R"(#version 150 core
in vec4 lineTint;
out vec4 colour;
uniform float strength;
void main() { colour = vec4(lineTint.rgb, lineTint.a * strength); })";

/// Behind everything: two colours from top to bottom, and the floor (z = 0) with fine and strong lines that
/// fade with the distance from the middle, and the soft shadow. Drawn after what stands before it, so that
/// only what is seen of it costs.
constexpr const char* backVertex = R"(#version 150 core
in vec3 vertexPosition;
out float height;
out vec3 toward;
uniform mat4 inverseViewProjectionMatrix;
uniform vec3 eyePosition;
void main() {
    height = 0.5 + 0.5 * vertexPosition.y;
    vec4 far = inverseViewProjectionMatrix * vec4(vertexPosition.xy, 1.0, 1.0);
    toward = far.xyz / far.w - eyePosition;
    gl_Position = vec4(vertexPosition.xy, 0.99999, 1.0);
})";

constexpr const char* backFragment = R"(#version 150 core
in float height;
in vec3 toward;
out vec4 colour;
uniform vec3 eyePosition;
uniform vec4 top;
uniform vec4 bottom;
uniform vec4 fineColour;
uniform vec4 strongColour;
uniform vec3 shadowColour;
uniform vec2 steps;
uniform vec2 middle;
uniform float radius;
uniform vec4 shadowBox;
uniform sampler2D shadow;
float lines(vec2 p, vec2 w, float broad) {
    vec2 g = abs(fract(p - 0.5) - 0.5) / w;
    vec2 on = clamp(broad - g, 0.0, 1.0) * clamp(1.6 - 4.0 * w, 0.0, 1.0);
    return max(on.x, on.y);
}
void main() {
    vec3 c = mix(bottom.rgb, top.rgb, height);
    float t = -eyePosition.z / (abs(toward.z) < 1e-5 ? 1e-5 : toward.z);
    vec2 place = eyePosition.xy + t * toward.xy;
    vec2 w = max(fwidth(place), vec2(1e-6));
    float far = length(place - middle) / radius;
    if (t > 0.0 && far < 1.0) {
        float fade = clamp((1.0 - far) * 1.6, 0.0, 1.0);
        c = mix(c, fineColour.rgb, lines(place / steps.x, w / steps.x, 0.9) * fineColour.a * fade);
        c = mix(c, strongColour.rgb, lines(place / steps.y, w / steps.y, 1.4) * strongColour.a * fade);
        c = mix(c, shadowColour, texture(shadow, (place - shadowBox.xy) / shadowBox.zw).r);
    }
    colour = vec4(c, 1.0);
})";

/// Labels: places in pixels (y down) with a depth, and a place in the picture of all words.
constexpr const char* labelVertex = R"(#version 150 core
in vec3 vertexPosition;
in vec2 wordPlace;
in vec4 tint;
out vec2 uv;
out vec4 labelTint;
uniform vec2 viewSize;
void main() {
    uv = wordPlace;
    labelTint = tint;
    gl_Position = vec4(2.0 * vertexPosition.x / viewSize.x - 1.0, 1.0 - 2.0 * vertexPosition.y / viewSize.y, vertexPosition.z, 1.0);
})";

constexpr const char* labelFragment = R"(#version 150 core
in vec2 uv;
in vec4 labelTint;
out vec4 colour;
uniform sampler2D words;
void main() { colour = texture(words, uv) * labelTint; })";

}  // namespace shaders
}  // namespace hither
