// The rooms of the window by name.
import QtQml

QtObject {
    enum Room {
        Sites,
        Walk,
        Findings,
        Forecast,
        Tablet,
        Prepare
    }
}
