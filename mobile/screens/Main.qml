// The window: the top rail with its tags and title block, and the rooms under it, which stay as they were left.
import QtQuick
import Kneerail.Ui

Window {
    id: window

    required property WalkModel walk
    required property VisitClose close
    required property SitesModel sites
    required property FindingsModel findings
    required property ForecastModel forecast
    /// Somebody walked here before: the window stands there again.
    required property bool walked
    /// The room of the walk, where it was made before the window.
    property Room walkAhead: null
    property int place: walked ? Main.WalkRoom : Main.SitesRoom
    readonly property bool portrait: height > width
    readonly property Room room: place === Main.SitesRoom ? sitesRoom.room : place === Main.ForecastRoom ? forecastRoom.room : place === Main.FindingsRoom ? findingsRoom.room : walkRoom.room

    enum Place {
        SitesRoom,
        WalkRoom,
        FindingsRoom,
        ForecastRoom
    }

    function showNotSafe() {
        window.findings.openNotSafe();
        window.place = Main.FindingsRoom;
    }

    visible: true
    width: Screen.width
    height: Screen.height
    title: qsTr("Kneerail")
    color: Tokens.paper

    onPlaceChanged: {
        if (place !== Main.WalkRoom)
            window.walk.leave();
        if (place === Main.SitesRoom)
            window.sites.refresh();
        if (place === Main.FindingsRoom)
            window.findings.refresh();
    }

    Connections {
        target: window.sites

        function onRunOpened() {
            window.place = Main.WalkRoom;
        }
    }

    Connections {
        target: window.walk

        function onForecastWanted() {
            window.place = Main.ForecastRoom;
        }
    }

    Connections {
        target: window.findings

        function onWalkWanted() {
            if (window.place === Main.FindingsRoom && window.findings.opened >= 0)
                window.place = Main.WalkRoom;
        }
    }

    Connections {
        target: window.forecast

        function onWalkWanted() {
            window.place = Main.WalkRoom;
        }
    }

    TagRail {
        id: rail

        z: 1
        width: parent.width

        RailTag {
            objectName: "sitesTag"
            text: qsTr("Sites")
            here: window.place === Main.SitesRoom
            onClicked: window.place = Main.SitesRoom
        }

        RailTag {
            objectName: "walkTag"
            text: qsTr("Walk")
            here: window.place === Main.WalkRoom
            onClicked: window.place = Main.WalkRoom
        }

        RailTag {
            objectName: "findingsTag"
            text: qsTr("Findings")
            here: window.place === Main.FindingsRoom
            onClicked: window.place = Main.FindingsRoom
        }

        RailTag {
            objectName: "forecastTag"
            text: qsTr("Forecast")
            here: window.place === Main.ForecastRoom
            onClicked: {
                window.walk.askForecast();
                window.place = Main.ForecastRoom;
            }
        }

        cells: [
            TitleCell {
                objectName: "notSafeCell"
                visible: window.findings.notSafeCount !== "" && !window.portrait
                caption: window.findings.notSafeCount
                text: window.findings.notSafeWords
                lookAgain: true
                onClicked: window.showNotSafe()
            },
            Item {
                readonly property Item own: window.room ? window.room.cells : null

                width: own ? own.width : 0
                height: parent.height
                children: own ? [own] : []
            }
        ]
    }

    SiteLine {
        id: siteLine

        visible: window.portrait
        y: rail.height
        width: parent.width
        where: window.room ? window.room.whereLine : ""
        kept: window.room ? window.room.keptLine : ""
        notSafe: window.findings.notSafeCount === "" ? "" : qsTr("%1 · %2").arg(window.findings.notSafeCount).arg(window.findings.notSafeWords)
        onNotSafeTouched: window.showNotSafe()
    }

    Item {
        y: rail.height + (window.portrait ? siteLine.height : 0)
        width: parent.width
        height: parent.height - y

        RoomLoader {
            id: sitesRoom

            here: window.place === Main.SitesRoom
            portrait: window.portrait
            onWanted: setSource("Sites.qml", {
                objectName: "sitesRoom",
                portrait: window.portrait,
                sites: window.sites
            })
        }

        RoomLoader {
            id: walkRoom

            ahead: window.walkAhead
            here: window.place === Main.WalkRoom
            portrait: window.portrait
            onWanted: setSource("Walk.qml", {
                objectName: "walkRoom",
                portrait: window.portrait,
                walk: window.walk,
                close: window.close
            })

            Binding {
                target: window.walk
                property: "shown"
                value: walkRoom.here
            }
        }

        RoomLoader {
            id: findingsRoom

            here: window.place === Main.FindingsRoom
            portrait: window.portrait
            onWanted: setSource("Findings.qml", {
                objectName: "findingsRoom",
                portrait: window.portrait,
                findings: window.findings,
                walk: window.walk
            })
        }

        Connections {
            target: findingsRoom.item
            ignoreUnknownSignals: true

            function onFindWanted() {
                window.place = Main.WalkRoom;
                window.walk.openPad(WalkModel.FindingPad);
            }
        }

        RoomLoader {
            id: forecastRoom

            here: window.place === Main.ForecastRoom
            portrait: window.portrait
            onWanted: setSource("ForecastPart.qml", {
                objectName: "forecastRoom",
                portrait: window.portrait,
                forecast: window.forecast
            })
        }
    }
}
