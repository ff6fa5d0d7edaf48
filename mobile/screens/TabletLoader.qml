// The tablet's own room, made when it is first wanted; when it is done with, the room before comes back.
import QtQuick
import Kneerail.Ui

RoomLoader {
    id: loader

    required property ThisTablet tablet

    signal done

    onWanted: setSource("Tablet.qml", {
        objectName: "tabletRoom",
        portrait: loader.portrait,
        tablet: loader.tablet
    })

    Connections {
        target: loader.item
        ignoreUnknownSignals: true

        function onDone() {
            loader.done();
        }
    }
}
