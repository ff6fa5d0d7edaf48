// A room is made when it is first entered, or before there was a window, and stays as it was left.
import QtQuick

Loader {
    id: loader

    required property bool here
    required property bool portrait
    /// The room, where it was made before the window.
    property Room ahead: null
    readonly property Room room: ahead !== null ? ahead : item as Room

    signal wanted

    function make() {
        if (loader.here && loader.room === null)
            loader.wanted();
    }

    anchors.fill: parent
    visible: here
    focus: here
    onHereChanged: make()
    onLoaded: loader.room.focus = true
    Component.onCompleted: {
        if (loader.ahead !== null) {
            loader.ahead.parent = loader;
            loader.ahead.anchors.fill = loader;
            loader.ahead.focus = true;
        }
        make();
    }

    Binding {
        target: loader.room
        property: "portrait"
        value: loader.portrait
        when: loader.room !== null
    }
}
