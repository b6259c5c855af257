"""The drawings: a scene seen by a camera, as marks that any paper or screen can show."""
