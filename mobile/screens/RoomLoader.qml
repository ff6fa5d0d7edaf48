// A room is made when it is first entered, and stays as it was left.
import QtQuick

Loader {
    id: loader

    required property bool here
    required property bool portrait

    signal wanted

    function make() {
        if (loader.here && loader.status === Loader.Null)
            loader.wanted();
    }

    anchors.fill: parent
    visible: here
    focus: here
    onHereChanged: make()
    onLoaded: loader.item.focus = true
    Component.onCompleted: make()

    Binding {
        target: loader.item
        property: "portrait"
        value: loader.portrait
        when: loader.status === Loader.Ready
    }
}
