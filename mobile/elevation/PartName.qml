// A part in view as a screen reader finds it.
import QtQuick

Item {
    id: named

    required property int part
    required property rect rect
    required property string name

    signal pressed(int part)

    x: named.rect.x
    y: named.rect.y
    width: named.rect.width
    height: named.rect.height
    Accessible.role: Accessible.Button
    Accessible.name: named.name
    Accessible.onPressAction: named.pressed(named.part)
}
