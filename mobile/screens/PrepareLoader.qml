// The Prepare room, made when a day is prepared for the first time; Esc goes back to the sites.
import QtQuick
import Kneerail.Ui

RoomLoader {
    id: loader

    required property PrepareModel prepare

    signal goneBack

    onWanted: setSource("Prepare.qml", {
        objectName: "prepareRoom",
        portrait: loader.portrait,
        prepare: loader.prepare
    })

    Connections {
        target: loader.item
        ignoreUnknownSignals: true

        function onGoneBack() {
            loader.goneBack();
        }
    }
}
