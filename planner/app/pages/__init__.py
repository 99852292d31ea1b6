"""The pages of the window, one for each verb of the job."""
